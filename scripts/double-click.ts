import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import {
  bareRootLacks,
  endAll,
  layFiles,
  makeBareRoot,
  startIn,
  type CleanRoot,
  type Person,
} from './fresh-root.ts'

// The .deb on a bare Debian, as a person has it: installed with what it asks for, a build opened as a file manager opens
// it, by someone without rights and in Chromium's own sandbox, and removed again.

const mime = 'application/vnd.pitchline.build+json'

/** What a desktop has of its own, and what its window is looked at with: nothing that the program needs to run. */
const ofADesktop = [
  ...['shared-mime-info', 'desktop-file-utils', 'libglib2.0-bin', 'libfile-mimeinfo-perl'],
  ...['xvfb', 'x11-utils', 'procps'],
]

/** What is opened: two demos, told apart by the name in the window's title. */
const builds = ['culvert-crawler', 'hut-hauler'].map((name) => {
  const file = path.join('examples', `${name}.build.json`)
  return {
    file,
    base: path.basename(file),
    name: (JSON.parse(readFileSync(file, 'utf8')) as { name: string }).name,
  }
})

/** One thing that has to be so; gives why it is not, `null` where it is. */
interface Step {
  readonly what: string
  readonly run: (root: CleanRoot, deb: string) => Promise<string | null>
}

/** What a command of a person said, and its code. */
async function ran(root: CleanRoot, person: Person, command: string) {
  const child = startIn(root, person, command)
  const interrupted = (): void => endAll(child)
  process.once('SIGINT', interrupted)
  let said = ''
  for (const stream of [child.stdout, child.stderr]) stream?.on('data', (part) => (said += String(part)))
  const code = await new Promise<number>((ended) => {
    child.once('error', () => ended(126))
    child.once('close', (code) => ended(code ?? 1))
  })
  process.off('SIGINT', interrupted)
  return { said: said.trim(), code }
}

const install = (words: string) =>
  `DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends ${words}`

/** The end of what a command said where it did not end well. */
async function ends(root: CleanRoot, command: string): Promise<string | null> {
  const { said, code } = await ran(root, 'root', command)
  return code === 0 ? null : `code ${code}: ${said.slice(-600)}`
}

/** Whether a question of a person has just this answer. */
const answers =
  (command: string, expected: string): Step['run'] =>
  async (root) => {
    const { said } = await ran(root, 'walker', command)
    return said === expected ? null : `it answers ${JSON.stringify(said.slice(-300))}`
  }

/** Seconds within which a window stands there, on a busy machine. */
const shownWithin = 120

/**
 * Opens each build by a command, one after the other, and gives the titles of the windows then. In one piece: whatever was
 * started ends with it. Begun with nothing: beside Xvfb there would run the change of folder before it.
 */
const opening = (open: string) =>
  [
    ':',
    'Xvfb :7 -screen 0 1280x900x24 -nolisten tcp >/dev/null 2>&1 & export DISPLAY=:7',
    'for look in $(seq 100); do xwininfo -root >/dev/null 2>&1 && break; sleep 0.2; done',
    ...builds.flatMap(({ base, name }) => [
      `${open} ${base} >/tmp/said 2>&1 &`,
      `end=$(($(date +%s) + ${shownWithin}))`,
      `until xwininfo -root -tree | grep -qF "${name}" || [ "$(date +%s)" -gt "$end" ]; do sleep 0.5; done`,
    ]),
    `echo; xwininfo -root -tree | sed -n 's/^ *0x[0-9a-f]* "\\(.*Pitchline\\)".*/\\1/p'`,
    'ps -eo args | grep "^/opt/Pitchline" | grep -v -e " --type="',
    'tail -5 /tmp/said >&2',
  ].join('\n')

/** Whether opening both builds so shows a window for each, and nothing else. */
const opensBoth =
  (open: string): Step['run'] =>
  async (root) => {
    const { said } = await ran(root, 'walker', opening(open))
    const missing = builds.filter(({ name }) => !said.split('\n').some((line) => line.startsWith(`${name} `)))
    // A switch among the words of the program itself could take its sandbox from it: a file manager gives none.
    const switched = said
      .split('\n')
      .find((line) => line.startsWith('/opt/Pitchline/') && / --?\w/.test(line))
    if (switched !== undefined) return `it runs as ${switched}`
    return missing.length === 0
      ? null
      : `no window of ${missing.map(({ name }) => name).join(', ')}; it said: ${said.slice(-400)}`
  }

const steps: readonly Step[] = [
  {
    what: 'it is installed with what it asks for, and nothing is missing to start it',
    run: async (root, deb) =>
      (await ends(root, install(`./${path.basename(deb)}`))) ??
      ((await ran(root, 'root', 'ldd /opt/Pitchline/pitchline | grep "not found"')).said || null),
  },
  { what: 'a desktop’s own tools are there', run: (root) => ends(root, install(ofADesktop.join(' '))) },
  {
    what: 'its desktop entry is a sound one',
    run: (root) => ends(root, 'desktop-file-validate /usr/share/applications/pitchline.desktop'),
  },
  {
    what: 'a build is known by its name to one desktop',
    run: answers(`XDG_CURRENT_DESKTOP=GNOME xdg-mime query filetype ${builds[0]?.base}`, mime),
  },
  { what: 'and to those without', run: answers(`xdg-mime query filetype ${builds[0]?.base}`, mime) },
  {
    what: 'other JSON is not taken for one',
    run: answers(
      'echo {} >plain.json; XDG_CURRENT_DESKTOP=GNOME xdg-mime query filetype plain.json',
      'application/json',
    ),
  },
  {
    what: 'a build’s own program is Pitchline',
    run: answers(`xdg-mime query default ${mime}`, 'pitchline.desktop'),
  },
  { what: 'a double click opens that very build, another one beside it', run: opensBoth('gio open') },
  { what: 'so does xdg-open', run: opensBoth('xdg-open') },
  {
    what: 'removed, it is gone, and a person’s files are as they were',
    run: async (root) => {
      const trouble = await ends(root, 'apt-get purge -y -qq pitchline')
      const left = [
        'opt/Pitchline',
        'usr/share/applications/pitchline.desktop',
        'usr/share/mime/packages/pitchline.xml',
      ].filter((file) => existsSync(path.join(root.folder, file)))
      const inHome = ({ base }: (typeof builds)[number]) =>
        path.join(root.folder, 'home/walker/pitchline', base)
      const lost = builds.filter(
        (build) =>
          !existsSync(inHome(build)) || !readFileSync(inHome(build)).equals(readFileSync(build.file)),
      )
      const hasData = existsSync(path.join(root.folder, 'home/walker/.config/Pitchline'))
      const told = [...left, ...lost.map(({ file }) => file), ...(hasData ? [] : ['its data'])]
      return trouble ?? (told.length === 0 ? null : `not as it should be: ${told.join(', ')}`)
    },
  },
  {
    what: 'and its type with it',
    run: answers(`XDG_CURRENT_DESKTOP=GNOME xdg-mime query filetype ${builds[0]?.base}`, 'application/json'),
  },
]

/** `node scripts/run.js double-click [<.deb>]`: the package made last, or the one named. */
export async function run([named]: readonly string[]): Promise<number> {
  const deb = named ?? newest('release')
  const lacks =
    bareRootLacks() ?? (deb === null || !existsSync(deb) ? 'there is no .deb (npm run package -- deb)' : null)
  if (lacks !== null || deb === null) {
    console.error(`The package cannot be tried here: ${lacks}.`)
    return 1
  }
  const folder = mkdtempSync(path.join(os.tmpdir(), 'pitchline-desktop-'))
  try {
    console.log('Making a bare system…')
    const root = makeBareRoot(folder)
    layFiles(root, 'root', [deb])
    layFiles(
      root,
      'walker',
      builds.map(({ file }) => file),
    )
    let failed = 0
    for (const { what, run: look } of steps) {
      const trouble = await look(root, deb)
      if (trouble !== null) failed += 1
      console.log(trouble === null ? `so: ${what}` : `NOT SO: ${what}: ${trouble}`)
    }
    return failed === 0 ? 0 : 1
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** The package in a folder, null where there is none. */
function newest(folder: string): string | null {
  const name = existsSync(folder) ? readdirSync(folder).find((one) => one.endsWith('.deb')) : undefined
  return name === undefined ? null : path.join(folder, name)
}

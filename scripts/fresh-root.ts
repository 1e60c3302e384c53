import { execFileSync, spawn, type ChildProcess } from 'node:child_process'
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import path from 'node:path'
import { isInstalled } from './child.ts'
import { copySources } from './copy-sources.ts'

/** A system with nothing on it but what Debian calls essential and its package tool; with Node and npm where asked for. */
export interface CleanRoot {
  readonly folder: string
}

/** Who runs a command there: may install packages, or not. */
export type Person = 'root' | 'walker'

const walker = '1000:1000'

/** A person's copy of the sources, seen from inside. */
const homes: Readonly<Record<Person, string>> = { root: '/root', walker: '/home/walker' }

/** What of the environment goes along: only how this machine reaches a network. */
const networkNames = /^((https?|no)_proxy|NODE_EXTRA_CA_CERTS|SSL_CERT_(FILE|DIR))$/i

/** Why there can be no bare root here, in one clause; `null` where there can. */
export function bareRootLacks(): string | null {
  if (process.platform !== 'linux' || process.getuid?.() !== 0) return 'it wants root on Linux'
  const missing = ['apt-get', 'unshare', 'debootstrap', 'chroot'].filter((name) => !isInstalled(name))
  return missing.length === 0
    ? null
    : `${missing.join(', ')} missing (Debian: apt-get install debootstrap util-linux)`
}

/** The same of one with Node and npm. */
export function rootLacks(): string | null {
  const bare = bareRootLacks()
  if (bare !== null) return bare
  return process.env['npm_execpath'] ? null : 'it is started by `npm run fresh`, which says where npm is'
}

/** The archive that this machine's own packages come from, and the release. */
function archive(): { readonly uri: string; readonly release: string } {
  const release = /^VERSION_CODENAME=(\S+)/m.exec(readFileSync('/etc/os-release', 'utf8'))?.[1] ?? 'stable'
  const words = ['indextargets', '--format', '$(CODENAME) $(REPO_URI)']
  const lines = execFileSync('apt-get', words, { encoding: 'utf8' }).split('\n')
  const uri = lines.find((line) => line.startsWith(`${release} `))?.split(' ')[1]
  if (!uri) throw new Error(`no archive of ${release} among this machine's own package sources`)
  return { uri, release }
}

/** Makes the root in an empty folder, without Node: minutes, and 300 MB. */
export function makeBareRoot(folder: string): CleanRoot {
  const { uri, release } = archive()
  execFileSync('debootstrap', ['--variant=minbase', release, folder, uri], {
    stdio: ['ignore', 'ignore', 'inherit'],
  })
  // Made for its owner alone, and others have to come through.
  chmodSync(folder, 0o755)
  copyNetwork(folder)
  // It is thrown away: nothing of it has to be forced to the disk.
  writeFileSync(path.join(folder, 'etc/dpkg/dpkg.cfg.d/quick'), 'force-unsafe-io\n')
  writeFileSync(path.join(folder, 'etc/passwd'), 'walker:x:1000:1000::/home/walker:/bin/sh\n', { flag: 'a' })
  return { folder }
}

/** The same with Node and npm. */
export function makeRoot(folder: string): CleanRoot {
  const root = makeBareRoot(folder)
  copyNode(folder)
  return root
}

/** Lays files into the folder that a person's commands are started in. */
export function layFiles({ folder }: CleanRoot, person: Person, files: readonly string[]): void {
  const into = path.join(folder, homes[person], 'pitchline')
  mkdirSync(into, { recursive: true })
  for (const file of files) cpSync(file, path.join(into, path.basename(file)))
  if (person === 'walker') execFileSync('chown', ['-R', walker, path.join(folder, homes[person])])
}

/** How packages are reached: sources, keys, certificates, names. */
function copyNetwork(folder: string): void {
  const certificates = Object.entries(process.env).flatMap(([name, value]) =>
    /^(NODE_EXTRA_CA_CERTS|SSL_CERT_FILE)$/.test(name) && value ? [value] : [],
  )
  const files = [
    ...['/etc/resolv.conf', '/etc/hosts', '/etc/ssl/certs', '/usr/share/ca-certificates'],
    ...['/etc/apt/sources.list', '/etc/apt/sources.list.d', '/etc/apt/trusted.gpg.d', '/usr/share/keyrings'],
    ...certificates,
  ]
  rmSync(path.join(folder, 'etc/apt/sources.list'), { force: true })
  for (const file of files) {
    if (existsSync(file)) cpSync(file, path.join(folder, file), { recursive: true, dereference: true })
  }
  const acquire = execFileSync('apt-config', ['dump', 'Acquire'], { encoding: 'utf8' })
  writeFileSync(path.join(folder, 'etc/apt/apt.conf.d/00network'), acquire)
}

/** Node and npm as they are here, and nothing that was installed with them. */
function copyNode(folder: string): void {
  const npm = path.resolve(process.env['npm_execpath'] ?? '', '../..')
  const bin = path.join(folder, 'usr/local/bin')
  cpSync(process.execPath, path.join(bin, 'node'))
  cpSync(npm, path.join(folder, 'usr/local/lib/node_modules/npm'), { recursive: true })
  for (const name of ['npm', 'npx']) {
    const script = `../lib/node_modules/npm/bin/${name}-cli.js`
    chmodSync(path.join(bin, script), 0o755)
    symlinkSync(script, path.join(bin, name))
  }
}

/** Lays the sources, as they are in this folder now, into a person's empty home. */
export function laySources({ folder }: CleanRoot, person: Person): void {
  copySources(path.join(folder, homes[person], 'pitchline'))
  if (person === 'walker') execFileSync('chown', ['-R', walker, path.join(folder, homes[person])])
}

/** In a namespace of its own: the mounts and all that was started are gone with it. */
const enter = [
  'mount -t proc proc "$0/proc" && mount --rbind /dev "$0/dev" && mount -t tmpfs tmpfs "$0/tmp" || exit 125',
  'user=$1; shift; exec chroot --userspec="$user" "$0" /usr/bin/env -i "$@"',
].join('\n')

/** Starts a command of a person in that person's copy of the sources, its output piped; `endAll` ends it. */
export function startIn({ folder }: CleanRoot, person: Person, command: string): ChildProcess {
  const network = Object.entries(process.env).filter(([name]) => networkNames.test(name))
  const environment = [
    ...network.map(([name, value]) => `${name}=${value}`),
    ...[`HOME=${homes[person]}`, 'PATH=/usr/local/bin:/usr/bin:/bin:/usr/sbin:/sbin'],
    ...['LANG=C.UTF-8', 'NO_COLOR=1', 'CI=true'],
  ]
  const user = person === 'root' ? '0:0' : walker
  const inside = ['sh', '-c', `cd ${homes[person]}/pitchline && ${command}`]
  return spawn(
    'unshare',
    [
      ...['--mount', '--pid', '--fork', '--kill-child'],
      ...['sh', '-c', enter, folder, user, ...environment, ...inside],
    ],
    { stdio: ['ignore', 'pipe', 'pipe'], detached: true },
  )
}

/** Ends a command and all that it started: `unshare` itself does not listen to a request, nor does the first in a namespace. */
export function endAll(child: ChildProcess): void {
  if (child.pid !== undefined && child.exitCode === null) process.kill(-child.pid, 'SIGKILL')
}

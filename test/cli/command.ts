import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll } from 'vitest'
import { answerOf } from './warm.ts'

export const root = path.resolve(import.meta.dirname, '../..')
/** The built command, an ordinary Node script. */
export const command = path.join(root, 'dist/cli/pitchline.cjs')

/** What a run of the real command left behind. */
export interface Ran {
  readonly code: number | null
  readonly out: string
  readonly err: string
}

/** Each run as a process of its own, as people have it; otherwise only where a test is about the process. */
const eachApart = (process.env['PITCHLINE_PROCESSES'] ?? '') !== ''

/**
 * Runs the built `pitchline`: in a thread that has read the program once, as most of a start's work is the same each
 * time; as a process of its own where there is input to be piped.
 */
export function pitchline(words: readonly string[], input?: string | Uint8Array, folder = root): Ran {
  if (eachApart || input !== undefined) return pitchlineApart(words, input, folder)
  builtOrThrow()
  const before = process.cwd()
  process.chdir(folder)
  try {
    return answerOf(words)
  } finally {
    process.chdir(before)
  }
}

function builtOrThrow(): void {
  if (!existsSync(command)) throw new Error('dist/cli is missing: run `npm run build` first')
}

/** Runs the built `pitchline` as a process of its own, its streams being pipes. */
export function pitchlineApart(words: readonly string[], input?: string | Uint8Array, folder = root): Ran {
  builtOrThrow()
  const { status, stdout, stderr } = spawnSync(process.execPath, [command, ...words], {
    cwd: folder,
    encoding: 'utf8',
    timeout: 100_000,
    ...(input === undefined ? {} : { input }),
  })
  return { code: status, out: stdout, err: stderr }
}

const ranBefore = new Map<string, Ran>()

/**
 * What `pitchline` answers to these words: run once, however many tests look at it. For files of the project alone, which
 * do not change.
 */
export function pitchlineOnce(words: readonly string[]): Ran {
  const key = JSON.stringify(words)
  const ran = ranBefore.get(key) ?? pitchline(words)
  ranBefore.set(key, ran)
  return ran
}

/** A folder for the files of one test file, gone afterwards. */
export function temporaryFolder(): () => string {
  let folder = ''
  beforeAll(() => {
    folder = mkdtempSync(path.join(tmpdir(), 'pitchline-test-'))
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))
  return () => folder
}

export const demos = ['quick-sled-puller', 'hut-hauler', 'culvert-crawler'] as const

export const demoFile = (name: (typeof demos)[number]) => path.join(root, 'examples', `${name}.build.json`)

/** No line wider than a page, nothing that colours a terminal. */
export function untidyLines(text: string): readonly string[] {
  return text.split('\n').filter((line) => [...line].length > 80 || /[\u0000-\u001f\u007f]/.test(line))
}

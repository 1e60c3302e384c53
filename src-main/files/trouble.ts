import path from 'node:path'
import { failed, type Mistake, type Result } from '../../shared-engine/mistakes/mistake.ts'
import type { MistakeCode } from '../../shared-engine/mistakes/catalogue.ts'

/** What the person can do, per kind of trouble. */
const advice: Partial<Record<MistakeCode, string>> = {
  'no-such-file': 'a file that exists; it may have been moved or renamed',
  'file-gone': 'saving it here again, or under another name',
  'file-changed-outside': 'reading it again, overwriting it, or saving under another name',
  'file-read-only': 'saving under another name, or taking its write protection off',
  'file-not-permitted': 'another folder, or a change of permissions',
  'file-in-use': 'trying again once the other program has let go, or another name',
  'disk-full': 'freeing some room, or another disk',
  'disk-trouble': 'another disk or folder; check this one',
  'disk-unconfirmed': 'saving again',
}

/** Codes of the operating system and what they mean to a person. */
const codes: Record<string, MistakeCode> = {
  ENOENT: 'no-such-file',
  ENOTDIR: 'no-such-file',
  EISDIR: 'is-a-folder',
  EACCES: 'file-not-permitted',
  EPERM: 'file-not-permitted',
  EROFS: 'file-read-only',
  EBUSY: 'file-in-use',
  ETXTBSY: 'file-in-use',
  ENOSPC: 'disk-full',
  EDQUOT: 'disk-full',
  EFBIG: 'disk-full',
  EIO: 'disk-trouble',
}

/** One mistake about a file, which it names without its folder. */
function fileMistake(code: MistakeCode, file: string, kept: string): Mistake {
  return { code, path: '', value: path.basename(file), allowed: advice[code] ?? '', kept }
}

export function fileFailed<T>(code: MistakeCode, file: string, kept: string): Result<T> {
  return failed([fileMistake(code, file, kept)])
}

/** The operating system's code of what was thrown, empty where there is none. */
export function codeOf(thrown: unknown): string {
  const code = thrown instanceof Error ? (thrown as NodeJS.ErrnoException).code : undefined
  return typeof code === 'string' ? code : ''
}

/** Turns what a file call threw into a mistake that names the file; what is no file trouble is thrown on. */
export function failedBy<T>(thrown: unknown, doing: 'read' | 'write', file: string, kept: string): Result<T> {
  const code = codeOf(thrown)
  if (code === '') throw thrown
  const known = codes[code]
  if (known !== undefined) return fileFailed(known, file, kept)
  const value = `${path.basename(file)} (${code})`
  return failed([
    { code: doing === 'read' ? 'cannot-read' : 'cannot-write', path: '', value, allowed: '', kept },
  ])
}

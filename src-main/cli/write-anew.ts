import {
  closeSync,
  existsSync,
  fsyncSync,
  linkSync,
  openSync,
  renameSync,
  unlinkSync,
  writeSync,
} from 'node:fs'
import path from 'node:path'
import type { Mistake } from '../../shared-engine/mistakes/mistake.ts'
import { mistake } from './trouble.ts'

export const fileExists = mistake('file-exists', { value: 'a file of this name', allowed: 'another name' })

/** What the system says where a file can grow no further: the disk, the person's share of it, or a limit is full. */
const noRoom: ReadonlySet<string> = new Set(['ENOSPC', 'EDQUOT', 'EFBIG'])
/** What a disk says that knows no second name for a file. */
const noLinks: ReadonlySet<string> = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK'])

const codeOf = (thrown: unknown) =>
  thrown instanceof Error ? (thrown as NodeJS.ErrnoException).code : undefined

/** What stands against writing a file that was tried. Throws on what is a bug of ours. */
export function cannotWrite(thrown: unknown): Mistake {
  const code = codeOf(thrown)
  if (code === undefined) throw thrown
  if (code === 'EEXIST') return fileExists
  if (noRoom.has(code)) return mistake('disk-full', { value: 'this file' })
  const value =
    code === 'ENOENT' || code === 'ENOTDIR' ? 'there is no such folder' : `the system says ${code}`
  return mistake('cannot-write', { value })
}

/**
 * Writes a file that is not there yet: whole or not at all, and never over another one, even one that came to be
 * meanwhile.
 *
 * @throws what the disk says; nothing of the file is left then
 */
export function writeAnew(file: string, bytes: Uint8Array): void {
  if (existsSync(file)) throw Object.assign(new Error('a file of this name'), { code: 'EEXIST' })
  const beside = path.join(path.dirname(file), `.${path.basename(file).slice(0, 100)}.${process.pid}.new`)
  try {
    writeSynced(beside, bytes)
    putInPlace(beside, file)
  } finally {
    if (existsSync(beside)) unlinkSync(beside)
  }
}

function writeSynced(file: string, bytes: Uint8Array): void {
  const open = openSync(file, 'wx')
  try {
    for (let at = 0; at < bytes.length;) at += writeSync(open, bytes, at)
    fsyncSync(open)
  } finally {
    closeSync(open)
  }
}

/** A second name is refused where there is a file; a new name would take its place. */
function putInPlace(beside: string, file: string): void {
  try {
    linkSync(beside, file)
  } catch (thrown) {
    if (!noLinks.has(codeOf(thrown) ?? '')) throw thrown
    if (existsSync(file)) throw Object.assign(new Error('a file of this name'), { code: 'EEXIST' })
    renameSync(beside, file)
  }
}

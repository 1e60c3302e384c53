import { createHash } from 'node:crypto'
import { failed, succeeded, type Result } from '../../shared-engine/mistakes/mistake.ts'
import type { FileSystem } from './file-system.ts'
import { failedBy, fileFailed } from './trouble.ts'

/** No build comes near this; a film opened by mistake must not fill the memory. The engine's own limit is lower. */
const mostBytes = 16 * 1024 * 1024

/** What a file was, so that a change by another program is noticed: of its content, as clocks and sizes can lie. */
export function fingerprintOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex')
}

interface FileRead {
  readonly bytes: Uint8Array
  readonly fingerprint: string
}

/** A file's bytes and fingerprint, or why they can't be had. */
export async function readWhole(disk: FileSystem, file: string): Promise<Result<FileRead>> {
  try {
    const facts = await disk.stat(file)
    if (!facts.isFile) return fileFailed('is-a-folder', file, '')
    if (facts.size > mostBytes) {
      const value = `${(facts.size / 1e6).toFixed(0)} MB`
      return failed([{ code: 'too-large', path: '', value, allowed: 'at most 16 MiB', kept: '' }])
    }
    const bytes = new Uint8Array(await disk.readFile(file))
    return succeeded({ bytes, fingerprint: fingerprintOf(bytes) })
  } catch (thrown) {
    return failedBy(thrown, 'read', file, '')
  }
}

/** The fingerprint of what is in the file now, `null` where there is no file; throws what the disk throws. */
export async function fingerprintNow(disk: FileSystem, file: string): Promise<string | null> {
  try {
    return fingerprintOf(await disk.readFile(file))
  } catch (thrown) {
    if ((thrown as NodeJS.ErrnoException).code === 'ENOENT') return null
    throw thrown
  }
}

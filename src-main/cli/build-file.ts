import { closeSync, fstatSync, openSync } from 'node:fs'
import { mostBytes, readBuild } from '../../shared-engine/entries/read.ts'
import type { Build } from '../../shared-engine/entries/schema.ts'
import { failed, succeeded, type Mistake, type Result } from '../../shared-engine/mistakes/mistake.ts'
import type { Io } from './io.ts'
import { readUpTo } from './read-up-to.ts'
import { mistake, tell } from './trouble.ts'

/** The name that stands for standard input. */
const standardInput = '-'

/** Reads a build for a command: the build, or `null` after every mistake in it has been told. */
export function buildOf(file: string, io: Io): Build | null {
  return contentOf(file, readBuild, io)
}

/** Reads a file for a command with a reader of its kind: what is in it, or `null` after every mistake has been told. */
export function contentOf<T>(file: string, reader: (bytes: Uint8Array) => Result<T>, io: Io): T | null {
  const bytes = bytesOf(file)
  const content = bytes.ok ? reader(bytes.value) : bytes
  if (content.ok) return content.value
  tell(io, file === standardInput ? 'standard input' : file, content.mistakes)
  return null
}

/** At most as many bytes as a build may have, and one more: what is larger is not read to its end. */
function bytesOf(file: string): Result<Uint8Array> {
  let open: number | null = null
  try {
    open = file === standardInput ? 0 : openSync(file, 'r')
    const facts = fstatSync(open)
    if (facts.isDirectory()) return failed([mistake('is-a-folder', { allowed: 'a build file' })])
    if (facts.size > mostBytes) return failed([tooLarge(facts.size)])
    const bytes = readUpTo(open, mostBytes + 1)
    return bytes.length > mostBytes ? failed([tooLarge(null)]) : succeeded(bytes)
  } catch (thrown) {
    return failed([cannotRead(thrown)])
  } finally {
    if (open !== null && open !== 0) closeSync(open)
  }
}

/** `size` is null for a stream, which has none. */
function tooLarge(size: number | null): Mistake {
  const value = size === null ? 'more than 1 MiB' : `${(size / mostBytes).toFixed(1)} MiB`
  return mistake('too-large', { value, allowed: 'at most 1 MiB' })
}

function cannotRead(thrown: unknown): Mistake {
  const code = thrown instanceof Error ? (thrown as NodeJS.ErrnoException).code : undefined
  if (code === undefined) throw thrown
  if (code === 'ENOENT' || code === 'ENOTDIR') return mistake('no-such-file')
  if (code === 'EISDIR') return mistake('is-a-folder', { allowed: 'a build file' })
  const value = code === 'EACCES' || code === 'EPERM' ? 'this account may not' : `the system says ${code}`
  return mistake('cannot-read', { value })
}

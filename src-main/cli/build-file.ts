import { closeSync, constants, fstatSync, openSync, statSync } from 'node:fs'
import { mostBytes } from '../../shared-engine/entries/json-file.ts'
import { readBuild } from '../../shared-engine/entries/read.ts'
import type { Build } from '../../shared-engine/entries/schema.ts'
import { failed, succeeded, type Mistake, type Result } from '../../shared-engine/mistakes/mistake.ts'
import { oneLine } from '../../shared-engine/mistakes/shown.ts'
import type { Io } from './io.ts'
import { readUpTo } from './read-up-to.ts'
import { mistake, report } from './trouble.ts'
import { toEngine } from '../../shared-engine/units/convert.ts'

/** A named pipe is opened at once, where opening it would wait for ever if nobody writes. */
const withoutWaiting = constants.O_RDONLY | constants.O_NONBLOCK
/** ms that a named pipe is given until its first byte. */
const patience = 5000
const nothingCame = `it is a pipe, and nobody wrote to it for ${toEngine(patience, 'time', 'ms')} s`

/** The name that stands for standard input. */
const standardInput = '-'

/** Whether standard input is asked for more than once, which has been said then: what the first takes the second lacks. */
export function readsInputTwice(files: readonly string[], io: Io): boolean {
  if (files.filter((file) => file === standardInput).length < 2) return false
  report(io, 'pitchline', [mistake('input-twice', { allowed: 'one -, the others by name' })])
  return true
}

/** Reads a build for a command: the build, or `null` after every mistake in it has been reported. */
export function buildOf(file: string, io: Io): Build | null {
  return contentOf(file, readBuild, io)
}

/** Reads a file for a command with a reader of its kind: what is in it, or `null` after every mistake has been reported. */
export function contentOf<T>(file: string, reader: (bytes: Uint8Array) => Result<T>, io: Io): T | null {
  return readingOf(file, reader, io)?.value ?? null
}

/** The same with what there is to say of it: a build of an older version that was brought up to date. */
export function readingOf<T>(
  file: string,
  reader: (bytes: Uint8Array) => Result<T>,
  io: Io,
): { readonly value: T; readonly notes: readonly string[] } | null {
  const bytes = bytesOf(file, io)
  const content = bytes.ok ? reader(bytes.value) : bytes
  if (content.ok) return { value: content.value, notes: content.notes ?? [] }
  report(io, file === standardInput ? 'standard input' : file, content.mistakes)
  return null
}

/** At most as many bytes as a build may have, and one more: what is larger is not read to its end. */
function bytesOf(file: string, io: Io): Result<Uint8Array> {
  let open: number | null = null
  try {
    const pipe = file !== standardInput && statSync(file).isFIFO()
    open = file === standardInput ? 0 : openSync(file, pipe ? withoutWaiting : 'r')
    const facts = fstatSync(open)
    if (facts.isDirectory()) return failed([mistake('is-a-folder', { allowed: 'a build file' })])
    if (facts.size > mostBytes) return failed([tooLarge(facts.size)])
    if (pipe) io.progress?.(`${oneLine(file, 60)}: waiting for whoever writes to it`)
    const bytes = readUpTo(open, mostBytes + 1, pipe ? patience : 0)
    if (pipe) io.progress?.('')
    if (pipe && bytes.length === 0) return failed([mistake('cannot-read', { value: nothingCame })])
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

/** What a system says when it does not let a file be read. Throws on what is a bug of ours. */
export function cannotRead(thrown: unknown): Mistake {
  const code = thrown instanceof Error ? (thrown as NodeJS.ErrnoException).code : undefined
  if (code === undefined) throw thrown
  if (code === 'ENOENT' || code === 'ENOTDIR') return mistake('no-such-file')
  if (code === 'EISDIR') return mistake('is-a-folder', { allowed: 'a build file' })
  const value = code === 'EACCES' || code === 'EPERM' ? 'this account may not' : `the system says ${code}`
  return mistake('cannot-read', { value })
}

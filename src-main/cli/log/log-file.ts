import { closeSync, fstatSync, openSync } from 'node:fs'
import { refusal } from '../../../shared-engine/log/refusal.ts'
import { tooManyBytes } from '../../../shared-engine/log/text/reader.ts'
import { failed, succeeded, type Result } from '../../../shared-engine/mistakes/mistake.ts'
import { cannotRead } from '../build-file.ts'
import { readUpTo } from '../read-up-to.ts'
import { mistake } from '../trouble.ts'

/** Bytes of a stream that are read at a time: it has no size beforehand. */
const piece = 1 << 20

/** The bytes of a log: a file or a stream of less than 2 GiB. */
export function logBytesOf(file: string): Result<Uint8Array> {
  let open: number | null = null
  try {
    open = file === '-' ? 0 : openSync(file, 'r')
    const facts = fstatSync(open)
    if (facts.isDirectory()) return failed([mistake('is-a-folder', { allowed: 'a log file' })])
    if (facts.size >= tooManyBytes) return failed([tooBig(facts.size)])
    if (facts.isFile()) return succeeded(readUpTo(open, facts.size))
    return streamBytes(open)
  } catch (thrown) {
    return failed([cannotRead(thrown)])
  } finally {
    if (open !== null && open !== 0) closeSync(open)
  }
}

function streamBytes(open: number): Result<Uint8Array> {
  const pieces: Uint8Array[] = []
  let length = 0
  for (;;) {
    const next = readUpTo(open, piece)
    pieces.push(next)
    length += next.length
    if (length >= tooManyBytes) return failed([tooBig(length)])
    if (next.length < piece) break
  }
  const all = new Uint8Array(length)
  let at = 0
  for (const one of pieces) {
    all.set(one, at)
    at += one.length
  }
  return succeeded(all)
}

const tooBig = (size: number) =>
  refusal('too-big', { value: `${(size / 2 ** 30).toFixed(1)} GiB`, allowed: 'less than 2 GiB' })

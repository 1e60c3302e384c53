import { readSync } from 'node:fs'

/** ms between two looks at a stream that has nothing yet. */
const pause = 20

const clock = new Int32Array(new SharedArrayBuffer(4))

/**
 * Reads an open file or stream to its end, or up to so many bytes.
 *
 * @param open its descriptor
 * @param patience ms until the first byte, in which an end is taken for a writer that is not there yet
 * @returns what was there
 * @throws what the system throws, but for two that are no trouble: a stream that has nothing yet because whoever began
 * this process left it so that reading does not wait (EAGAIN), and the end of a pipe on Windows (EOF)
 */
export function readUpTo(open: number, most: number, patience = 0): Uint8Array {
  const bytes = new Uint8Array(most)
  let length = 0
  let waited = 0
  while (length < most) {
    const count = readSome(open, bytes, length)
    if (count === 0 && (length > 0 || waited >= patience)) break
    if (count === null || count === 0) Atomics.wait(clock, 0, 0, pause)
    if (count === 0) waited += pause
    length += count ?? 0
  }
  return bytes.subarray(0, length)
}

/** How many bytes came: 0 at the end, null where there is nothing yet. */
function readSome(open: number, bytes: Uint8Array, from: number): number | null {
  try {
    return readSync(open, bytes, from, bytes.length - from, null)
  } catch (thrown) {
    const code = thrown instanceof Error ? (thrown as NodeJS.ErrnoException).code : undefined
    if (code === 'EOF') return 0
    if (code !== 'EAGAIN') throw thrown
    return null
  }
}

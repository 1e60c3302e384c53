/** A line of a file with its number. */
interface FileLine {
  readonly number: number
  readonly text: string
}

const lineFeed = 10
const carriageReturn = 13
/** More of a line would not be read. */
const longest = 400

/**
 * Some lines of a file's bytes, as they stand there: one and those beside it.
 *
 * @param encoding as the reader of logs found it
 * @param number of the line in the middle, from 1; lines end at CR LF, LF or CR
 */
export function linesAbout(
  bytes: Uint8Array,
  encoding: string,
  number: number,
  beside = 2,
): readonly FileLine[] {
  const decoder = new TextDecoder(encoding.replace('utf-16-', 'utf-16'))
  const wide = encoding.startsWith('utf-16')
  // Two bytes a letter: the whole is read, since a byte of 10 may be half of a letter.
  const source = wide ? new TextEncoder().encode(decoder.decode(bytes)) : bytes
  const text = wide ? new TextDecoder() : decoder
  const found: FileLine[] = []
  let [start, line] = [0, 1]
  for (let at = 0; at <= source.length && line <= number + beside; at += 1) {
    const byte = source[at]
    if (byte !== lineFeed && byte !== carriageReturn && at < source.length) continue
    if (line >= number - beside && (at > start || at < source.length))
      found.push({ number: line, text: text.decode(source.subarray(start, Math.min(at, start + longest))) })
    if (byte === carriageReturn && source[at + 1] === lineFeed) at += 1
    start = at + 1
    line += 1
  }
  return found
}

/** Most bytes of a first line that are looked at. */
const longestHeading = 65_536

/** Whether two files begin with the same line: logs of one recorder. */
export function sameHeading(one: Uint8Array, other: Uint8Array): boolean {
  for (let at = 0; at < longestHeading; at += 1) {
    if (one[at] !== other[at] || one[at] === undefined) return false
    if (one[at] === 10 || one[at] === 13) return true
  }
  return false
}

/** The ways of writing characters that a log may use. */
export type Encoding = 'utf-8' | 'utf-16-le' | 'utf-16-be' | 'windows-1252'

/** How a file's bytes are to be read: from `from` to `to`; what lies behind `to` are zeros of an unfinished file. */
export interface Encoded {
  readonly encoding: Encoding
  readonly from: number
  readonly to: number
  readonly zerosCut: boolean
}

/** Why bytes are no text. */
type NotText = 'empty' | 'binary'

/** What reading text needs beyond the language; every host of the engine has it. */
declare const TextDecoder: new (
  encoding: string,
  options: { readonly fatal: boolean },
) => { decode(bytes: Uint8Array, options: { readonly stream: boolean }): string }

const zerosLookedAt = 4_096
const textLookedAt = 65_536

/**
 * The encoding of a file.
 *
 * A byte-order mark decides. Without one, zeros at every second place mean UTF-16; zeros at the end are what a recorder
 * leaves that lost its power, and are cut; then UTF-8 where the bytes are it, else windows-1252.
 *
 * @param bytes the whole file
 * @returns encoding and range, or why it is no text: `binary` where control characters stand near the beginning
 * *Source:* byte-order marks: Unicode Standard, chapter 23.8; windows-1252 as the fallback: WHATWG Encoding Standard;
 * the shares of zeros: common practice, no source.
 */
export function encodingOf(bytes: Uint8Array): Encoded | NotText {
  if (bytes.length === 0) return 'empty'
  const marked = byMark(bytes)
  if (marked !== null) return { ...marked, to: bytes.length, zerosCut: false }
  const wide = byZeros(bytes)
  if (wide !== null) return { encoding: wide, from: 0, to: bytes.length, zerosCut: false }
  let to = bytes.length
  while (to > 0 && bytes[to - 1] === 0) to -= 1
  const zerosCut = to < bytes.length
  if (to === 0) return 'binary'
  if (hasControls(bytes.subarray(0, Math.min(to, zerosLookedAt)))) return 'binary'
  const encoding = isUtf8(bytes.subarray(0, Math.min(to, textLookedAt))) ? 'utf-8' : 'windows-1252'
  return { encoding, from: 0, to, zerosCut }
}

function byMark(bytes: Uint8Array): { readonly encoding: Encoding; readonly from: number } | null {
  const [first, second, third] = bytes
  if (first === 0xef && second === 0xbb && third === 0xbf) return { encoding: 'utf-8', from: 3 }
  if (first === 0xff && second === 0xfe) return { encoding: 'utf-16-le', from: 2 }
  if (first === 0xfe && second === 0xff) return { encoding: 'utf-16-be', from: 2 }
  return null
}

/** Latin text in UTF-16 has a zero in every second byte, and hardly one in the others. */
function byZeros(bytes: Uint8Array): Encoding | null {
  const length = Math.min(bytes.length, zerosLookedAt)
  if (length < 2) return null
  let odd = 0
  let even = 0
  for (let place = 0; place < length; place += 1) {
    if (bytes[place] !== 0) continue
    if (place % 2 === 1) odd += 1
    else even += 1
  }
  const odds = Math.floor(length / 2)
  const evens = length - odds
  if (odd >= 0.3 * odds && even <= 0.05 * evens) return 'utf-16-le'
  if (even >= 0.3 * evens && odd <= 0.05 * odds) return 'utf-16-be'
  return null
}

/** Tab, line feed, vertical tab, form feed and carriage return belong to text. */
function hasControls(bytes: Uint8Array): boolean {
  return bytes.some((byte) => byte < 9 || (byte >= 14 && byte <= 31))
}

/** A sequence that the end of the window cuts through counts as whole. */
function isUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true })
    return true
  } catch {
    return false
  }
}

import type { Encoding } from './encoding.ts'

/** What reading text needs beyond the language; every host of the engine has it. */
declare const TextDecoder: new (
  encoding: string,
  options: { readonly ignoreBOM: boolean },
) => { decode(bytes?: Uint8Array, options?: { readonly stream: boolean }): string }

/** Turns the blocks of a file into text, one after the other; a character may lie across two blocks. */
export interface Decoder {
  /** @param last no more bytes follow: a sequence left open is told as U+FFFD */
  decode(bytes: Uint8Array, last: boolean): string
}

/**
 * A decoder of an encoding. Bytes that do not fit give U+FFFD.
 *
 * *Source:* WHATWG Encoding Standard.
 */
export function decoderOf(encoding: Encoding): Decoder {
  if (encoding === 'windows-1252') return { decode: (bytes) => windowsText(bytes) }
  const label = { 'utf-8': 'utf-8', 'utf-16-le': 'utf-16le', 'utf-16-be': 'utf-16be' }[encoding]
  const decoder = new TextDecoder(label, { ignoreBOM: true })
  return { decode: (bytes, last) => decoder.decode(bytes, { stream: !last }) }
}

/**
 * Characters of 0x80 to 0x9F; the five places that are free stand for themselves.
 *
 * *Source:* WHATWG Encoding Standard, index windows-1252. Kept here because some hosts decode this label as ISO 8859-1.
 */
const upper = [
  0x20ac, 0x81, 0x201a, 0x192, 0x201e, 0x2026, 0x2020, 0x2021, 0x2c6, 0x2030, 0x160, 0x2039, 0x152, 0x8d,
  0x17d, 0x8f, 0x90, 0x2018, 0x2019, 0x201c, 0x201d, 0x2022, 0x2013, 0x2014, 0x2dc, 0x2122, 0x161, 0x203a,
  0x153, 0x9d, 0x17e, 0x178,
] as const

const stretch = 8_192

function windowsText(bytes: Uint8Array): string {
  let text = ''
  const codes = new Uint16Array(Math.min(stretch, bytes.length))
  for (let from = 0; from < bytes.length; from += stretch) {
    const length = Math.min(stretch, bytes.length - from)
    for (let place = 0; place < length; place += 1) {
      const byte = bytes[from + place] ?? 0
      codes[place] = byte >= 0x80 && byte <= 0x9f ? (upper[byte - 0x80] ?? byte) : byte
    }
    text += String.fromCharCode(...codes.subarray(0, length))
  }
  return text
}

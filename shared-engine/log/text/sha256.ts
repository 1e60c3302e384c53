/** Fractions of the cube roots of the first 64 primes, 32 bits each. */
const constants = new Uint32Array(64)
/** Fractions of the square roots of the first eight. */
const start = new Uint32Array(8)

const fractionBits = (root: number) => (root - Math.floor(root)) * 2 ** 32

fillConstants()

function fillConstants(): void {
  let found = 0
  for (let candidate = 2; found < 64; candidate += 1) {
    let prime = true
    for (let divisor = 2; divisor * divisor <= candidate; divisor += 1) {
      if (candidate % divisor === 0) prime = false
    }
    if (!prime) continue
    constants[found] = fractionBits(Math.cbrt(candidate))
    if (found < 8) start[found] = fractionBits(Math.sqrt(candidate))
    found += 1
  }
}

const turned = (word: number, by: number) => (word >>> by) | (word << (32 - by))

/**
 * The digest of bytes, as 64 hexadecimal digits.
 *
 * *Source:* FIPS 180-4, SHA-256. Kept here because the engine may use no part of a host, and the web's own is asynchronous.
 * @example sha256(new Uint8Array()).slice(0, 8) // 'e3b0c442'
 */
export function sha256(bytes: Uint8Array): string {
  const length = bytes.length
  const padded = new Uint8Array((Math.floor((length + 8) / 64) + 1) * 64)
  padded.set(bytes)
  padded[length] = 0x80
  const view = new DataView(padded.buffer)
  view.setUint32(padded.length - 8, Math.floor((length * 8) / 2 ** 32))
  view.setUint32(padded.length - 4, (length * 8) >>> 0)
  const state = Uint32Array.from(start)
  const words = new Uint32Array(64)
  for (let block = 0; block < padded.length; block += 64) {
    for (let place = 0; place < 16; place += 1) words[place] = view.getUint32(block + 4 * place)
    mix(state, words)
  }
  return [...state].map((word) => word.toString(16).padStart(8, '0')).join('')
}

function mix(state: Uint32Array, words: Uint32Array): void {
  const w = (place: number) => words[place] ?? 0
  for (let place = 16; place < 64; place += 1) {
    const early = w(place - 15)
    const late = w(place - 2)
    const small = turned(early, 7) ^ turned(early, 18) ^ (early >>> 3)
    const large = turned(late, 17) ^ turned(late, 19) ^ (late >>> 10)
    words[place] = w(place - 16) + small + w(place - 7) + large
  }
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = state
  for (let round = 0; round < 64; round += 1) {
    const choice = (e & f) ^ (~e & g)
    const one =
      h + (turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)) + choice + (constants[round] ?? 0) + w(round)
    const two = (turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + ((a & b) ^ (a & c) ^ (b & c))
    h = g
    g = f
    f = e
    e = (d + one) >>> 0
    d = c
    c = b
    b = a
    a = (one + two) >>> 0
  }
  const mixed = [a, b, c, d, e, f, g, h]
  mixed.forEach((value, place) => (state[place] = (state[place] ?? 0) + value))
}

/** UTF-8 bytes of a text. *Source:* RFC 3629; a lone surrogate becomes U+FFFD. */
export function utf8Bytes(text: string): Uint8Array {
  const bytes: number[] = []
  for (const character of text) {
    let code = character.codePointAt(0) ?? 0
    if (code >= 0xd800 && code <= 0xdfff) code = 0xfffd
    if (code < 0x80) bytes.push(code)
    else if (code < 0x800) bytes.push(0xc0 | (code >> 6), 0x80 | (code & 63))
    else if (code < 0x10000) bytes.push(0xe0 | (code >> 12), 0x80 | ((code >> 6) & 63), 0x80 | (code & 63))
    else
      bytes.push(
        0xf0 | (code >> 18),
        0x80 | ((code >> 12) & 63),
        0x80 | ((code >> 6) & 63),
        0x80 | (code & 63),
      )
  }
  return Uint8Array.from(bytes)
}

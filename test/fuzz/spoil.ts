import { randomStream, type Random } from '../../shared-engine/numeric/random.ts'

// Sound files, spoilt at random: the same seed spoils the same file in the same way.

/** How many inputs of each kind are tried: some in every run, a million of all by `npm run endure`. */
export const fuzzed = Number(process.env['PITCHLINE_FUZZED'] ?? 150)

/** Seeds of a trial: so many, from 0 on unless the environment names another first one. */
export function seedsOf(count: number): readonly number[] {
  const first = Number(process.env['PITCHLINE_FIRST_SEED'] ?? 0)
  return Array.from({ length: count }, (_, at) => first + at)
}

export const belowOf = (random: Random) => (count: number) => Math.floor(random() * count)

/** Bytes that mean something to the one or the other reader. */
const likelyBytes = [0, 10, 13, 34, 44, 45, 46, 58, 59, 9, 48, 57, 91, 93, 101, 123, 125, 255]

/** Bytes changed, taken out, doubled, or put in, at up to twelve places. */
export function spoiltBytes(original: Uint8Array, random: Random): Uint8Array {
  const below = belowOf(random)
  const bytes = [...original]
  const cuts = 1 + below(12)
  for (let cut = 0; cut < cuts; cut += 1) {
    const at = below(bytes.length + 1)
    const kind = below(5)
    const byte = random() < 0.6 ? (likelyBytes[below(likelyBytes.length)] ?? 0) : below(256)
    if (kind === 0) bytes[at] = byte
    else if (kind === 1) bytes.splice(at, 1 + below(60))
    else if (kind === 2) bytes.splice(at, 0, byte)
    else if (kind === 3) bytes.splice(at, 0, ...bytes.slice(at, at + below(200)))
    else bytes.splice(at, below(8), ...Array.from({ length: below(8) }, () => below(256)))
  }
  return Uint8Array.from(bytes)
}

/** What nobody would enter: wrong kinds, ends of the numbers, names that objects have, text that drives a terminal. */
const oddValues: readonly unknown[] = [
  ...[null, true, '', 'abc', '12', [], {}, [[]], { '': 0 }, [null], { constructor: 1 }],
  ...[0, -0, -1, 1, 0.5, 1e-9, 1e9, 1e308, -1e308, 5e-324, 2 ** 53, 99, 1000],
  ...['__proto__', '\u0000', '\u202e', '\u001b[2J', 'é'.repeat(3000), '🦫', '=1+1', '../../x'],
]

/** A JSON value with one to three of its inner values replaced, taken out, put in twice or under another name. */
export function spoiltValue(original: unknown, random: Random): unknown {
  const below = belowOf(random)
  const root: Record<string, unknown> = { value: structuredClone(original) }
  const times = 1 + below(3)
  for (let time = 0; time < times; time += 1) {
    const holders = holdersOf(root)
    const holder = holders[below(holders.length)] ?? root
    const keys = Object.keys(holder)
    const key = keys[below(keys.length)] ?? 'value'
    const kind = below(10)
    const odd = structuredClone(oddValues[below(oddValues.length)])
    const was = holder[key]
    if (kind === 0 && holder !== root) delete holder[key]
    else if (kind === 1 && holder !== root) holder[`${key}s`] = was
    else if (kind <= 5 && typeof was === 'number') holder[key] = was * 10 ** (random() * 8 - 4)
    else holder[key] = odd
  }
  return root['value']
}

/** Every group and list in a value, the value's own holder first. */
function holdersOf(value: object): Record<string, unknown>[] {
  const inner = Object.values(value).filter((one): one is object => typeof one === 'object' && one !== null)
  return [value as Record<string, unknown>, ...inner.flatMap(holdersOf)]
}

/** A file spoilt as text or as what stands in it. */
export function spoiltJson(original: Uint8Array, seed: number): Uint8Array {
  const random = randomStream(seed, 7)
  if (random() < 0.3) return spoiltBytes(original, random)
  const value: unknown = JSON.parse(new TextDecoder().decode(original))
  return new TextEncoder().encode(JSON.stringify(spoiltValue(value, random)))
}

/** Numbers in a result that are none, at any depth. */
export function numbersThatAreNone(value: unknown, at = ''): readonly string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${at}: ${value}`]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, one]) => numbersThatAreNone(one, `${at}.${key}`))
}

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { placeOfJsonError } from '../../shared-engine/entries/json-place.ts'
import { scanJson } from '../../shared-engine/entries/json-scan.ts'
import { readBuild, readBuildText, readBuildValue } from '../../shared-engine/entries/read.ts'
import { writeBuild } from '../../shared-engine/entries/write.ts'
import { sentenceOf } from '../../shared-engine/mistakes/catalogue.ts'
import type { Result } from '../../shared-engine/mistakes/mistake.ts'
import { fullBuild } from '../fixtures/build/plain.ts'
import { plausibleBuild } from '../fixtures/build/random.ts'

const sound = new TextEncoder().encode(writeBuild(fullBuild()))

/** Whatever came in: a build, or at least one mistake, each a sentence on one line. */
function expectAnswer(read: Result<unknown>): void {
  if (read.ok) return
  expect(read.mistakes.length).toBeGreaterThan(0)
  for (const mistake of read.mistakes) expect(sentenceOf(mistake)).toMatch(/^\P{Cc}+\.$/u)
}

describe('hostile input to reading a build never throws and always has an answer', () => {
  it('a bit turned in a sound file', () => {
    for (let at = 0; at < sound.length; at += 3) {
      const bytes = sound.slice()
      bytes[at] = (bytes[at] ?? 0) ^ (1 << (at % 8))
      expectAnswer(readBuild(bytes))
    }
  })

  it('a sound file cut short anywhere', () => {
    for (let length = 0; length < sound.length - 1; length += 5) {
      const read = readBuild(sound.slice(0, length))
      expect(read.ok).toBe(false)
      expectAnswer(read)
    }
  })

  it('bytes of any kind', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => expectAnswer(readBuild(bytes))))
  })

  it('text of any kind', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 400 }), (text) => expectAnswer(readBuildText(text))),
    )
  })

  it('JSON of any shape', () => {
    fc.assert(fc.property(fc.json(), (text) => expectAnswer(readBuildText(text))))
  })

  it('values of any shape in any place of a sound build', () => {
    const anything = fc.anything({
      withNullPrototype: true,
      withBigInt: true,
      withDate: true,
      withMap: true,
      withSparseArray: true,
    })
    fc.assert(
      fc.property(plausibleBuild, fc.nat(), fc.nat(), anything, (build, group, entry, value) => {
        const groups = Object.keys(build)
        const name = groups[group % groups.length] ?? 'pack'
        const inner = (build as unknown as Record<string, unknown>)[name]
        const keys = typeof inner === 'object' && inner !== null ? Object.keys(inner) : []
        const key = keys[entry % Math.max(keys.length, 1)] ?? 'series'
        expectAnswer(readBuildValue({ ...build, [name]: value }))
        if (!Array.isArray(inner))
          expectAnswer(readBuildValue({ ...build, [name]: { ...(inner as object), [key]: value } }))
      }),
    )
  })

  it('two mebibytes of noise', () => {
    const noise = new Uint8Array(2 * 1_048_576)
    let state = 1
    for (let at = 0; at < noise.length; at += 1) noise[at] = state = (state * 75 + 74) % 65537
    expectAnswer(readBuild(noise))
    expect(readBuild(noise).ok).toBe(false)
    // The largest that is looked into at all, in three bad shapes.
    for (const text of ['[', '{"a":', '"\\']) {
      const read = readBuildText(text.repeat(Math.floor(1_000_000 / text.length)))
      expect(read.ok).toBe(false)
      expectAnswer(read)
    }
  })

  it('numbers at the edge of what a number holds', () => {
    for (const number of [
      '1e308',
      '1e999',
      '-1e999',
      '1e-400',
      '-0',
      '0.1e1',
      `1${'0'.repeat(400)}`,
      'NaN',
      'Infinity',
      '0x10',
      '01',
    ]) {
      expectAnswer(readBuildText(writeBuild(fullBuild()).replace('"series": 14', `"series": ${number}`)))
    }
  })
})

describe('the place of a mistake in JSON', () => {
  it('is past everything that still was JSON', () => {
    // Cutting a text off and writing a mark that no JSON has must be told at just that mark.
    fc.assert(
      fc.property(fc.json(), fc.nat(), (text, pick) => {
        const at = pick % (text.length + 1)
        const place = placeOfJsonError(`${text.slice(0, at)}\u0001`)
        expect(place).toMatch(/^line 1, column \d+$/)
        expect(Number(/\d+$/.exec(place)?.[0])).toBeLessThanOrEqual(at + 1)
      }),
    )
  })

  it('is nowhere before the end of sound JSON', () => {
    fc.assert(
      fc.property(fc.json(), (text) => {
        expect(placeOfJsonError(text)).toBe('it ends too early')
        expect(placeOfJsonError(`${text} ?`)).toBe(`line 1, column ${text.length + 2}`)
      }),
    )
  })
})

describe('the scan of a text', () => {
  it('finds a key that stands twice, exactly where a parser would lose one', () => {
    const key = fc.constantFrom('a', 'b', '\\u0061', 'a.b', '')
    const group = fc.array(key, { maxLength: 5 })
    fc.assert(
      fc.property(group, group, (outer, inner) => {
        const body = (keys: string[], value: string) =>
          `{${keys.map((name) => `"${name}": ${value}`).join(', ')}}`
        const text = `[0, ${body(outer, body(inner, '"x, \\"a\\": {["'))}]`
        const lost = (keys: string[]) =>
          new Set(keys.map((name) => JSON.parse(`"${name}"`) as string)).size < keys.length
        expect(scanJson(text).duplicates.length > 0).toBe(lost(outer) || (outer.length > 0 && lost(inner)))
      }),
    )
  })
})

import { describe, expect, test } from 'vitest'
import { readPattern } from '../../../shared-engine/drive/read.ts'
import { mostBytes, readJsonFile, readJsonText } from '../../../shared-engine/entries/json-file.ts'
import { readStoredBuild } from '../../../shared-engine/entries/read.ts'
import { readReadings } from '../../../shared-engine/measure/read.ts'
import { sentenceOf } from '../../../shared-engine/mistakes/catalogue.ts'
import { succeeded, type Result } from '../../../shared-engine/mistakes/mistake.ts'
import { readSpace } from '../../../shared-engine/search/space-read.ts'

const bytesOf = (text: string) => new TextEncoder().encode(text)

const sentencesOf = (read: Result<unknown>) => (read.ok ? [] : read.mistakes.map(sentenceOf))

const readers: readonly (readonly [kind: string, read: (bytes: Uint8Array) => Result<unknown>])[] = [
  ['build', readStoredBuild],
  ['search space', readSpace],
  ['drive pattern', readPattern],
  ['readings', (bytes) => readReadings('kv', bytes, null)],
]

describe.each(readers)('a file of kind %s refuses in the same words', (kind, read) => {
  test('a file that is larger than 1 MiB', () => {
    expect(sentencesOf(read(new Uint8Array(2 * mostBytes)))).toEqual([
      'the file is too large: 2.0 MiB; allowed: at most 1 MiB.',
    ])
  })

  // RFC 3629: the byte FF stands in no UTF-8 text.
  test('bytes that are no text', () => {
    expect(sentencesOf(read(new Uint8Array([0xff, 0xfe, 0x7b])))).toEqual(['the file is not UTF-8 text.'])
  })

  test('a text that is no JSON, at its place', () => {
    const [sentence] = sentencesOf(read(bytesOf('{"format":}')))
    expect(sentence).toMatch(/^the file is not JSON: line 1/)
  })

  test('what is nested too deeply, before it is parsed', () => {
    expect(sentencesOf(read(bytesOf('['.repeat(50_000))))).toEqual([
      'the file is nested too deeply; allowed: at most 16 levels.',
    ])
  })

  test('a key that reaches into how objects work', () => {
    expect(sentencesOf(read(bytesOf('{"__proto__":{}}')))).toContain(
      '__proto__ is a key that no file may have; take it out.',
    )
  })

  test('what is no group', () => {
    const [sentence] = sentencesOf(read(bytesOf('[1,2]')))
    expect(sentence).toMatch(
      kind === 'readings'
        ? /^the file: keys and values in braces, found a list of 2\.$/
        : /^the file is a list of 2, not a group of entries; allowed: keys and values in braces\.$/,
    )
  })

  test('an empty file', () => {
    const [sentence] = sentencesOf(read(bytesOf(' \n')))
    expect(sentence).toMatch(kind === 'search space' ? /^the file is not JSON/ : /^the file is empty/)
  })

  test('a key that stands twice', () => {
    const sentences = sentencesOf(read(bytesOf('{"name":"demo","name":"demo"}')))
    expect(sentences[0]).toBe(
      kind === 'readings' ? 'name: one of it, not two.' : 'name stands in the file more than once; keep one.',
    )
  })
})

test('the value is read once all of the file is sound, with or without a byte-order mark', () => {
  const reader = { valueFrom: (value: unknown) => succeeded(value), empty: 'empty-file' } as const
  expect(readJsonText('\uFEFF{"a":1}', reader)).toEqual({ ok: true, value: { a: 1 } })
  expect(readJsonFile(new Uint8Array([0xef, 0xbb, 0xbf, 0x5b, 0x5d]), reader)).toEqual({
    ok: true,
    value: [],
  })
})

test('a kind of file may allow more bytes, and says how many', () => {
  const reader = {
    valueFrom: (value: unknown) => succeeded(value),
    empty: 'empty-file',
    most: 2 * mostBytes,
  } as const
  expect(readJsonText(`"${'a'.repeat(mostBytes)}"`, reader).ok).toBe(true)
  expect(sentencesOf(readJsonFile(new Uint8Array(3 * mostBytes), reader))).toEqual([
    'the file is too large: 3.0 MiB; allowed: at most 2 MiB.',
  ])
})

import type { MistakeCode } from '../mistakes/catalogue.ts'
import { failed, mistakeAt, succeeded, type Mistake, type Result } from '../mistakes/mistake.ts'
import { hostileKeysOf } from './hostile-keys.ts'
import { isJsonGroup, type JsonGroup } from './json-group.ts'
import { placeOfJsonError } from './json-place.ts'
import { mostDepth, scanJson } from './json-scan.ts'
import { textOf } from './utf8.ts'

const bytesOfMebibyte = 1_048_576

/** 1 MiB: a build is a few kilobytes; what is larger is something else. */
export const mostBytes = bytesOfMebibyte

/** How one kind of file is read, once its bytes are JSON. */
interface JsonReader<T> {
  /** The value with everything checked, or every mistake in it at once. */
  readonly valueFrom: (value: unknown) => Result<T>
  /** Most bytes of the file, a whole number of MiB; `mostBytes` unless given. */
  readonly most?: number
  /** What a file without any text is. */
  readonly empty: 'empty-file' | 'not-json'
  /** The mistake of a key that stands twice in a group; `duplicate-key` unless given. */
  readonly twice?: (path: string) => Mistake
}

const wholeFile = (code: MistakeCode, value: string, allowed = ''): Mistake => ({
  code,
  path: '',
  value,
  allowed,
  kept: '',
})

function tooLarge(size: number, most: number) {
  const found = `${(size / bytesOfMebibyte).toFixed(1)} MiB`
  return failed<never>([wholeFile('too-large', found, `at most ${most / bytesOfMebibyte} MiB`)])
}

const tooDeep = () => failed<never>([wholeFile('too-deep', '', `at most ${mostDepth} levels`)])

/**
 * The one way from a file's bytes to a checked value: size, UTF-8, depth, JSON, keys that stand twice, then the value.
 *
 * @param bytes UTF-8, with or without a byte-order mark, as many as the reader allows
 * @returns the value, or every mistake that could be found at once
 */
export function readJsonFile<T>(bytes: Uint8Array, reader: JsonReader<T>): Result<T> {
  const { most = mostBytes } = reader
  if (bytes.length > most) return tooLarge(bytes.length, most)
  const text = textOf(bytes)
  return text === null ? failed([wholeFile('not-utf8', '')]) : readJsonText(text, reader)
}

/** The same for a text. */
export function readJsonText<T>(text: string, reader: JsonReader<T>): Result<T> {
  const written = text.startsWith('\uFEFF') ? text.slice(1) : text
  const { most = mostBytes } = reader
  if (written.length > most) return tooLarge(written.length, most)
  if (written.trim() === '' && reader.empty === 'empty-file') return failed([wholeFile('empty-file', '')])
  const scan = scanJson(written)
  if (scan.tooDeep) return tooDeep()
  const parsed = parsedJson(written)
  if (!parsed.ok) return parsed
  const twiceAt = reader.twice ?? ((path: string) => mistakeAt('duplicate-key', path, undefined))
  const twice = scan.duplicates.map(twiceAt)
  const read = reader.valueFrom(parsed.value)
  if (twice.length === 0) return read
  return failed(read.ok ? twice : [...twice, ...read.mistakes])
}

/** What a text in JSON says, or where the parser stopped. */
export function parsedJson(text: string): Result<unknown> {
  try {
    return succeeded(JSON.parse(text) as unknown)
  } catch {
    return failed([wholeFile('not-json', placeOfJsonError(text))])
  }
}

/** A value that is a group and no deeper than may be, with the keys in it that no file may have. */
interface SoundGroup {
  readonly group: JsonGroup
  readonly forbidden: readonly Mistake[]
}

const notAGroup = (value: unknown) => mistakeAt('not-an-object', '', value, 'keys and values in braces')

/**
 * The group that a whole file must be.
 *
 * @param otherwise the mistake of a value that is no group, where the kind of file has words of its own for it
 */
export function soundGroupOf(
  value: unknown,
  otherwise: (value: unknown) => Mistake = notAGroup,
): Result<SoundGroup> {
  if (!isJsonGroup(value)) return failed([otherwise(value)])
  const { forbidden, tooDeep: isTooDeep } = hostileKeysOf(value, mostDepth)
  return isTooDeep ? tooDeep() : succeeded({ group: value, forbidden })
}

/**
 * The mistake of a group that is another kind of file, or does not say which; null where it is the one asked for. The
 * rest of such a file is not worth reading.
 *
 * @param code what a file of another kind is called
 */
export function wrongFormatOf(group: JsonGroup, format: string, code: MistakeCode): Mistake | null {
  const found = Object.hasOwn(group, 'format') ? group['format'] : undefined
  if (found === format) return null
  return mistakeAt(found === undefined ? 'missing' : code, 'format', found, `"${format}"`)
}

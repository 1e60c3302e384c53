import type { MistakeCode } from './catalogue.ts'
import { shown } from './shown.ts'

/** Foreseen trouble as a value: a wrong entry, a file that cannot be read, a build that cannot work. */
export interface Mistake {
  /** Key of the wording in the catalogue. */
  readonly code: MistakeCode
  /** Where: keys joined by dots, lists counted from 0 (`stages.0.ratio`); empty for the whole file. */
  readonly path: string
  /** What was found there, shortened for reading. */
  readonly value: string
  /** What is allowed there, with its unit. */
  readonly allowed: string
  /** What stays in force; empty where nothing was kept. */
  readonly kept: string
}

/** Either the value asked for or every mistake that stood in its way, all at once. */
export type Result<T> =
  | {
      readonly ok: true
      readonly value: T
      /** What was done to the value on the way, in sentences: an older file brought up to date. Absent: nothing. */
      readonly notes?: readonly string[]
    }
  | { readonly ok: false; readonly mistakes: readonly Mistake[] }

/** Wraps a value that could be had, with what there is to say about it. */
export function succeeded<T>(value: T, notes: readonly string[] = []): Result<T> {
  return notes.length === 0 ? { ok: true, value } : { ok: true, value, notes }
}

/** Wraps what went wrong; at least one mistake. */
export function failed<T>(mistakes: readonly Mistake[]): Result<T> {
  return { ok: false, mistakes }
}

/** A mistake at a path, with what stands there shortened for reading; nothing is kept. */
export function mistakeAt(code: MistakeCode, path: string, value: unknown, allowed = ''): Mistake {
  return { code, path, value: value === undefined ? '' : shown(value), allowed, kept: '' }
}

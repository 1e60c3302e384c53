import type { GroupNode, ListNode, RecordNode, Rows, UnionNode } from './group.ts'
import type { JsonGroup } from '../json-group.ts'
import type { Row } from './row.ts'

// The static types of the build, from its rows. Two shapes: what a file holds, and what is in force.

type Flat<T> = { -readonly [K in keyof T]: T[K] } & {}

/** What the row of one entry holds. */
type ValueOf<R> = R extends { readonly always: infer Value }
  ? Value
  : R extends { readonly choices: readonly { readonly value: infer Word }[] }
    ? Word
    : R extends { readonly flag: true }
      ? boolean
      : R extends { readonly document: true }
        ? JsonGroup
        : R extends { readonly kind: 'text' }
          ? string
          : number

/** A key that a file may leave out. */
type MayLack<N> = N extends Row
  ? N extends { readonly optional: true } | { readonly default: unknown } | { readonly defaultFrom: unknown }
    ? true
    : false
  : N extends ListNode
    ? N extends { readonly required: true }
      ? false
      : true
    : N extends RecordNode | { readonly whenAbsent: unknown }
      ? true
      : false

/** A key that lacks a value even with every default in force. */
type IsOptional<N> = N extends { readonly optional: true } | { readonly whenAbsent: 'none' } ? true : false

/** The word of a union that stands above these rows, in place of all its words. */
type WithWord<R extends Rows, By extends string, Word> = {
  [K in keyof R]: K extends By ? OneWord<Word> : R[K]
}
interface OneWord<Word> {
  readonly label: string
  readonly kind: 'text'
  readonly help: string
  readonly always: Word
}

type OthersOf<U extends UnionNode> = U extends { readonly others: infer Others extends Rows }
  ? WithWord<Others, U['by'], Exclude<ValueOf<Others[U['by']]>, keyof U['variants']>>
  : never

type VariantsOf<U extends UnionNode> =
  | { [Word in keyof U['variants']]: WithWord<U['variants'][Word], U['by'], Word> }[keyof U['variants']]
  | OthersOf<U>

type StoredRows<R> = R extends Rows
  ? Flat<
      { [K in keyof R as MayLack<R[K]> extends true ? never : K]: Stored<R[K]> } & {
        [K in keyof R as MayLack<R[K]> extends true ? K : never]?: Stored<R[K]> | undefined
      }
    >
  : never

type CompleteRows<R> = R extends Rows
  ? Flat<
      { [K in keyof R as IsOptional<R[K]> extends true ? never : K]: Complete<R[K]> } & {
        [K in keyof R as IsOptional<R[K]> extends true ? K : never]?: Complete<R[K]> | undefined
      }
    >
  : never

/** What a file holds of a node: what the builder entered, nothing more. */
export type Stored<N> = N extends Row
  ? ValueOf<N>
  : N extends GroupNode
    ? StoredRows<N['entries']>
    : N extends UnionNode
      ? StoredRows<VariantsOf<N>>
      : N extends ListNode
        ? Stored<N['item']>[]
        : N extends RecordNode
          ? Record<string, Stored<N['each']>>
          : never

/** What is in force of a node: every default filled in. */
export type Complete<N> = N extends Row
  ? ValueOf<N>
  : N extends GroupNode
    ? CompleteRows<N['entries']>
    : N extends UnionNode
      ? CompleteRows<VariantsOf<N>>
      : N extends ListNode
        ? Complete<N['item']>[]
        : N extends RecordNode
          ? Record<string, Complete<N['each']>>
          : never

/** Paths of the lists that rows have, those inside the items of another left out. */
export type ListsOf<R, Above extends string = ''> = {
  [K in keyof R & string]: R[K] extends ListNode
    ? `${Above}${K}`
    : R[K] extends GroupNode
      ? ListsOf<R[K]['entries'], `${Above}${K}.`>
      : never
}[keyof R & string]

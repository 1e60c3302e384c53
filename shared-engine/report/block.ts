import type { Scene } from '../draw/scene.ts'

/** A column of a table. */
export interface Column {
  readonly label: string
  /** Numbers stand at the end. */
  readonly align: 'start' | 'end'
  /** Its part of the width, against the other columns. */
  readonly share: number
}

export interface Row {
  /** As many as there are columns. */
  readonly cells: readonly string[]
  /** Marked; its words say it too. */
  readonly tone?: 'over' | 'near'
}

/** A piece of the sheet: what it is, never how it looks. Texts are plain; who writes them out escapes them. */
export type Block =
  | { readonly block: 'answer' | 'text' | 'quiet' | 'caution' | 'heading'; readonly text: string }
  /** A name, and what goes on behind it on the same line. */
  | { readonly block: 'run'; readonly label: string; readonly text: string }
  | { readonly block: 'list'; readonly items: readonly string[] }
  | { readonly block: 'table'; readonly columns: readonly Column[]; readonly rows: readonly Row[] }
  /** Drawings; `wide` stands alone on its line, others two by two. */
  | { readonly block: 'scenes'; readonly scenes: readonly Scene[]; readonly wide: boolean }
  /** Lines that keep their breaks. */
  | { readonly block: 'lines'; readonly lines: readonly string[] }

type SectionId =
  | 'answer'
  | 'limits'
  | 'not-judged'
  | 'mishaps'
  | 'remedies'
  | 'order'
  | 'alarms'
  | 'plots'
  | 'figures'
  | 'entries'
  | 'notes'
  | 'cautions'
  | 'workings'

export interface Section {
  readonly id: SectionId
  readonly heading: string
  readonly blocks: readonly Block[]
}

/** The printable sheet of one build. Serialisable. */
export interface Sheet {
  readonly title: string
  /** What it was made with and when, one line. */
  readonly made: string
  /**
   * What stands on one page, closely set; the first goes over its whole width, the others are set in columns. Empty where
   * everything is asked for.
   */
  readonly page: readonly Section[]
  /** What follows on further pages. */
  readonly sections: readonly Section[]
  /** Stands at the foot of every page. */
  readonly foot: string
}

export const text = (words: string): Block => ({ block: 'text', text: words })
export const quiet = (words: string): Block => ({ block: 'quiet', text: words })
export const heading = (words: string): Block => ({ block: 'heading', text: words })
export const run = (label: string, words: string): Block => ({ block: 'run', label, text: words })
export const list = (items: readonly string[]): Block => ({ block: 'list', items })

/** A column of words, or of numbers. */
export const words = (label: string, share: number): Column => ({ label, align: 'start', share })
export const numbers = (label: string, share: number): Column => ({ label, align: 'end', share })

import { sentenceOf } from '../../shared-engine/mistakes/catalogue.ts'
import type { Mistake } from '../../shared-engine/mistakes/mistake.ts'

/** Something that happened, told in a line over the page until it is read. */
interface Notice {
  readonly tone: 'trouble' | 'told'
  /** What happened. */
  readonly what: string
  /** What is safe, and what to do. */
  readonly next: string
  /** One line each; can be copied. */
  readonly details: readonly string[]
  /** The entry that it is about: its field is one press away. */
  readonly entry?: { readonly path: string; readonly label: string }
}

/** The notice shown, and what screen readers are told politely. */
export class Notices {
  shown = $state.raw<Notice | null>(null)
  /** Spoken by the live region. */
  spoken = $state.raw('')

  trouble(what: string, next: string, mistakes: readonly Mistake[] = []): void {
    this.shown = { tone: 'trouble', what, next, details: mistakes.map(sentenceOf) }
  }

  /** What was typed into a field and could not be taken. */
  notTaken(text: string, entry: { readonly path: string; readonly label: string }, kept: string): void {
    const what = `“${text}” was not taken as ${entry.label}.`
    this.shown = { tone: 'trouble', what, next: `It is as it was: ${kept}.`, details: [], entry }
  }

  /** Nothing went wrong, but a person should know of it: what was done, and what of it is in the details. */
  tell(what: string, next: string, details: readonly string[]): void {
    this.shown = { tone: 'told', what, next, details }
  }

  /** Something that should not have happened; `details` is for whoever is asked for help. */
  fault(next: string, details: string): void {
    this.shown = { tone: 'trouble', what: 'Something in the window went wrong.', next, details: [details] }
  }

  done(what: string): void {
    this.shown = null
    this.spoken = what
  }

  dismiss(): void {
    this.shown = null
  }
}

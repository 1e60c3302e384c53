import { SvelteMap } from 'svelte/reactivity'
import { completeBuild, withEntry } from '../../../shared-engine/index.ts'
import { pattern as ownPattern } from '../../../shared-engine/entries/parts/pattern.ts'
import { driveJob } from '../../../shared-engine/jobs/drive.ts'
import { readPattern, readPatternValue } from '../../../shared-engine/drive/read.ts'
import type { DriveRun } from '../../../shared-engine/drive/result.ts'
import type { Pattern } from '../../../shared-engine/drive/drive.ts'
import { storedPatternOf } from '../../../shared-engine/drive/rows.ts'
import { sentenceOf } from '../../../shared-engine/mistakes/catalogue.ts'
import { patternPartOf } from '../../../shared-engine/machine/pattern.ts'
import type { PatternRowPart } from '../../../shared-engine/machine/parts.ts'
import { threads } from '../../workers/client.ts'
import { Following } from '../../state/following.svelte.ts'
import { History } from '../../state/history.svelte.ts'
import type { QuestionState } from '../../state/question.ts'
import type { Workspace } from '../../state/workspace.svelte.ts'

/** A row with a number of its own, so that a field keeps to it when others come and go. */
export interface EditedRow {
  readonly id: number
  readonly row: PatternRowPart
}

/** What came of a drive, with the rows that were driven: others may stand there by now. */
interface Driven {
  readonly run: DriveRun
  readonly rows: readonly PatternRowPart[]
}

interface EditedPattern {
  readonly name: string
  readonly notes: string
  readonly rows: readonly EditedRow[]
}

const changed = ', changed'
/** Rows that a build's own pattern may have: fewer than a pattern's file. */
export const mostKept = ownPattern.entries.rows.most
/** ms after a change until it is driven: short, since a drive of ten minutes takes a blink. */
const pause = 150
let made = 0

function edited({ name, notes, rows }: Pattern): EditedPattern {
  return { name, notes, rows: rows.map((row) => ({ id: (made += 1), row })) }
}

/**
 * *Over a drive*: the build's own pattern, or another one as chosen and edited, with an undo of its own (the build is
 * untouched until it is kept), and what came of it.
 */
export class DriveWork implements QuestionState {
  /** Null: the build's own. */
  readonly #history = new History<EditedPattern | null>(null)
  readonly #session: Workspace['session']
  /** Whether the table of rows is open. */
  rowsOpen = $state(false)
  /** What is wrong, by row and column; while there is anything, nothing is driven. */
  readonly wrong = new SvelteMap<string, string>()
  readonly work: Following<Driven>

  constructor({ session }: Workspace) {
    this.#session = session
    this.work = new Following<Driven>(
      () => [session.stored, this.#history.document],
      ({ progress, ended }) => {
        const { pattern } = this
        const { rows } = pattern
        const build = completeBuild(session.stored)
        return threads.start(
          'drive',
          driveJob,
          { build, pattern },
          {
            progress: ({ done, total, secondsLeft }) => progress(done, total, secondsLeft),
            ended: ({ end, outcome }) => ended(end.type, outcome === null ? null : { run: outcome, rows }),
          },
        )
      },
      pause,
    )
  }

  /** The build's own pattern; its rows are numbered downwards from −1, so that a field keeps to its place. */
  readonly #own: EditedPattern = $derived.by(() => {
    const { name, rows } = patternPartOf(completeBuild(this.#session.stored).service.pattern)
    const numbered = rows.map((row, at) => ({ id: -1 - at, row }))
    return { name: name ?? 'This build’s drive', notes: '', rows: numbered }
  })
  readonly #edited: EditedPattern = $derived.by(() => this.#history.document ?? this.#own)

  /** Whether it is the build's own that is driven, as the build holds it. */
  get isOwn(): boolean {
    return this.#history.document === null
  }

  /** Name of the build's own pattern. */
  get ownName(): string {
    return this.#own.name
  }

  get rows(): readonly EditedRow[] {
    return this.#edited.rows
  }

  readonly pattern: Pattern = $derived.by(() => plain(this.#edited))

  /** Back to the build's own pattern. */
  takeOwn(): void {
    this.#history.change('the build’s own drive', null)
    this.wrong.clear()
  }

  /** What undoing would take back here; null for nothing. */
  get undoName(): string | null {
    return this.#history.undoName
  }

  undo(): void {
    this.#history.undo()
    this.wrong.clear()
  }

  take(pattern: Pattern): void {
    this.#history.change(pattern.name, edited(pattern))
    this.wrong.clear()
  }

  /** Takes a pattern's file, or answers with what is wrong with it. */
  takeFile(bytes: Uint8Array) {
    const read = readPattern(bytes)
    if (read.ok) this.take(read.value)
    return read.ok ? [] : read.mistakes
  }

  /** Changes a row, or answers with what is allowed there. */
  setRow(id: number, part: Partial<PatternRowPart>, group: string | null): string {
    const next = this.rows.map((one) => (one.id === id ? { id, row: { ...one.row, ...part } } : one))
    const at = next.findIndex((one) => one.id === id)
    const read = readPatternValue(storedPatternOf(plain({ ...this.#edited, rows: next })))
    if (!read.ok) return read.mistakes.map(({ allowed }) => `Allowed: ${allowed}.`).join(' ')
    this.#change(`row ${at + 1}`, next, group)
    return ''
  }

  /** A row more, like the one that it follows. */
  addAfter(id: number): void {
    const next = this.rows.flatMap((one) =>
      one.id === id ? [one, { id: (made += 1), row: one.row }] : [one],
    )
    this.#change('add a row', next, null)
  }

  /** All rows one after the other, as often as said. */
  repeat(times: number): void {
    const next = Array.from({ length: times }, () => this.rows).flatMap((rows) =>
      rows.map(({ row }) => ({ id: (made += 1), row })),
    )
    this.#change(`repeat ${times} times`, next, null)
  }

  /** Whether the build keeps just these rows. */
  readonly isKept: boolean = $derived.by(
    () => JSON.stringify(keptOf(plain(this.#own)).rows) === JSON.stringify(keptOf(this.pattern).rows),
  )

  /** Puts the pattern into the build, where it is the basis of heat and range; says what stands against it. */
  keep(): readonly string[] {
    const { name, rows } = this.pattern
    if (rows.length > mostKept)
      return [
        `A build keeps a drive of at most ${mostKept} rows, and this one has ${rows.length}: it can be driven here, but not kept.`,
      ]
    const called = name.endsWith(changed) ? name.slice(0, -changed.length) : name
    const next = withEntry(this.#session.stored, 'service.pattern', keptOf({ ...this.pattern, name: called }))
    const mistakes = this.#session.change(`keep the drive ${called}`, next).map(sentenceOf)
    if (mistakes.length === 0) this.takeOwn()
    return mistakes
  }

  remove(id: number): void {
    if (this.rows.length === 1) return
    for (const key of [...this.wrong.keys()]) if (key.startsWith(`${id}.`)) this.wrong.delete(key)
    this.#change(
      'remove a row',
      this.rows.filter((one) => one.id !== id),
      null,
    )
  }

  closeGroup(): void {
    this.#history.closeGroup()
  }

  /** A pattern chosen here stays: the next build is driven over the same. */
  forget(): void {
    this.work.forget()
  }

  #change(name: string, rows: readonly EditedRow[], group: string | null): void {
    const before = this.#edited
    const called = before.name.endsWith(changed) ? before.name : `${before.name}${changed}`
    this.#history.change(name, { ...before, name: called.slice(0, 120), rows }, group)
  }
}

function plain({ name, notes, rows }: EditedPattern): Pattern {
  return { name, notes, rows: rows.map(({ row }) => row) }
}

/** A pattern as a build keeps it. */
function keptOf(pattern: Pattern) {
  const { name, rows } = storedPatternOf(pattern)
  return { name, rows }
}

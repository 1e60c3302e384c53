import { SvelteMap } from 'svelte/reactivity'
import { completeBuild, withEntry } from '../../../shared-engine/index.ts'
import { driveJob } from '../../../shared-engine/jobs/drive.ts'
import { demoPatterns } from '../../../shared-engine/drive/demos.ts'
import { readPattern, readPatternValue } from '../../../shared-engine/drive/read.ts'
import type { DriveRun } from '../../../shared-engine/drive/result.ts'
import type { Pattern } from '../../../shared-engine/drive/drive.ts'
import { storedPatternOf } from '../../../shared-engine/drive/rows.ts'
import { sentenceOf } from '../../../shared-engine/mistakes/catalogue.ts'
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

interface EditedPattern {
  readonly name: string
  readonly notes: string
  readonly rows: readonly EditedRow[]
}

const changed = ', changed'
let made = 0

function edited({ name, notes, rows }: Pattern): EditedPattern {
  return { name, notes, rows: rows.map((row) => ({ id: (made += 1), row })) }
}

/** *Over a drive*: the pattern as edited, with an undo of its own (the build is untouched), and what came of it. */
export class DriveWork implements QuestionState {
  readonly #history: History<EditedPattern>
  readonly #session: Workspace['session']
  /** What is wrong, by row and column; while there is anything, nothing is driven. */
  readonly wrong = new SvelteMap<string, string>()
  readonly work: Following<DriveRun>

  constructor({ session }: Workspace) {
    this.#session = session
    const [first] = demoPatterns
    if (first === undefined) throw new Error('there is no demo pattern')
    this.#history = new History(edited(first))
    this.work = new Following<DriveRun>(
      () => [session.stored, this.#history.document],
      ({ progress, ended }) =>
        threads.start(
          'drive',
          driveJob,
          { build: completeBuild(session.stored), pattern: this.pattern },
          {
            progress: ({ done, total, secondsLeft }) => progress(done, total, secondsLeft),
            ended: ({ end, outcome }) => ended(end.type, outcome),
          },
        ),
    )
  }

  get rows(): readonly EditedRow[] {
    return this.#history.document.rows
  }

  readonly pattern: Pattern = $derived.by(() => plain(this.#history.document))

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
    const read = readPatternValue(storedPatternOf(plain({ ...this.#history.document, rows: next })))
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
  readonly isKept: boolean = $derived.by(() => {
    const kept = this.#session.stored.service?.pattern
    return kept !== undefined && JSON.stringify(kept.rows) === JSON.stringify(keptOf(this.pattern).rows)
  })

  /** Puts the pattern into the build, where it is the basis of heat and range; says what stands against it. */
  keep(): readonly string[] {
    const next = withEntry(this.#session.stored, 'service.pattern', keptOf(this.pattern))
    return this.#session.change(`keep the drive ${this.pattern.name}`, next).map(sentenceOf)
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

  /** The pattern stays: the next build is driven over the same. */
  forget(): void {
    this.work.forget()
  }

  #change(name: string, rows: readonly EditedRow[], group: string | null): void {
    const { document } = this.#history
    const called = document.name.endsWith(changed) ? document.name : `${document.name}${changed}`
    this.#history.change(name, { ...document, name: called.slice(0, 120), rows }, group)
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

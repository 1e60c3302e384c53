import { SvelteMap } from 'svelte/reactivity'
import { completeBuild } from '../../shared-engine/index.ts'
import type { Measured } from '../../shared-engine/jobs/measure.ts'
import type { MeasuredResult, Measurement } from '../../shared-engine/measure/measure.ts'
import type { Instrument } from '../../shared-engine/measure/readings.ts'
import { testsTelling } from '../../shared-engine/measure/tells.ts'
import { typedReading, typedReadings, type PastedCell } from '../../shared-engine/measure/typed-readings.ts'
import { sentenceOf } from '../../shared-engine/mistakes/catalogue.ts'
import type { Result } from '../../shared-engine/mistakes/mistake.ts'
import { guideOf, type Guide, type TestId } from '../../shared-engine/reference/measurements.ts'
import { takeMeasured } from '../fields/edits.ts'
import { Following, type Held } from '../state/following.svelte.ts'
import type { QuestionState } from '../state/question.ts'
import type { Workspace } from '../state/workspace.svelte.ts'
import { threads } from '../workers/client.ts'
import { keptReadings, readingsDocument, withReadings, type Given, type KeptReadings } from './kept.ts'

/** Work whose code is still being loaded; the window starts without it. */
function heldLater(starting: Promise<Held>): Held {
  return {
    stop: () => void starting.then((held) => held.stop()),
    drop: () => void starting.then((held) => held.drop()),
  }
}

/** *From a measurement*: the guided test that is open, its readings as they are typed, what comes of them. */
export class BenchWork implements QuestionState {
  readonly #workspace: Workspace
  /** The test that is open; null: the list of all. */
  test = $state.raw<TestId | null>(null)
  /** An entry whose tests stand first in the list of all, and alone; null: none. */
  wanted = $state.raw<string | null>(null)
  /** What is being typed, or was and is no number, by its place: `rows.3.rpm`. */
  readonly drafts = new SvelteMap<string, string>()
  readonly work: Following<Result<Measured>>

  constructor(workspace: Workspace) {
    this.#workspace = workspace
    const { session } = workspace
    this.work = new Following<Result<Measured>>(
      () => [session.stored, this.test],
      ({ ended }) => {
        const { test } = this
        if (test === null) {
          ended('finished', null)
          return { stop: () => {}, drop: () => {} }
        }
        const build = completeBuild(session.stored)
        const readings = readingsDocument(guideOf(test), test, keptReadings(session.stored, test))
        return heldLater(
          import('../../shared-engine/jobs/measure.ts').then(({ measureJob }) =>
            threads.start(
              'measure',
              measureJob,
              { test, readings, build },
              { ended: ({ end, outcome }) => ended(end.type, outcome) },
            ),
          ),
        )
      },
    )
  }

  readonly guide: Guide | null = $derived(this.test === null ? null : guideOf(this.test))

  /** What the build keeps of this test. */
  readonly kept: KeptReadings | null = $derived.by(() =>
    this.test === null ? null : keptReadings(this.#workspace.session.stored, this.test),
  )

  /** What came of the readings as they are; null while it is worked out, or where they are not whole. */
  readonly measured: Measured | null = $derived.by(() => {
    const { found, isCurrent } = this.work
    return isCurrent && found?.ok === true ? found.value : null
  })

  /** What stands against working them out, in sentences. */
  readonly mistakes: readonly string[] = $derived.by(() => {
    const { found, isCurrent } = this.work
    return isCurrent && found?.ok === false ? found.mistakes.map(sentenceOf) : []
  })

  /** Whether the build keeps readings of a test. */
  hasReadings(test: TestId): boolean {
    return this.#workspace.session.stored.readings?.[test] !== undefined
  }

  /** Opens the one test of an entry; the list where it has several, or none. */
  begin(path: string | null): void {
    const tests = path === null ? [] : testsTelling(path)
    this.wanted = tests.length > 1 ? path : null
    if (tests.length > 0) this.choose(tests.length === 1 ? (tests[0] ?? null) : null)
  }

  choose(test: TestId | null): void {
    this.drafts.clear()
    this.test = test
  }

  forget(): void {
    this.work.forget()
    this.choose(null)
  }

  /** A cell of the table was typed into; empty takes the reading out. */
  setCell(row: number, name: string, text: string): void {
    const { kept } = this
    if (kept === null) return
    const place = `rows.${row}.${name}`
    this.drafts.set(place, text)
    const read = text.trim() === '' ? null : typedReading(name, text)
    if (read?.ok === false) return
    const value = read === null ? null : read.value
    const rows = Array.from({ length: Math.max(kept.rows.length, row + 1) }, (_, at) => kept.rows[at] ?? {})
    this.#keep({ ...kept, rows: rows.map((one, at) => (at === row ? withNumber(one, name, value) : one)) })
  }

  /** A table was pasted with its first line at this row. */
  paste(from: number, cells: readonly PastedCell[]): void {
    const { kept } = this
    if (kept === null) return
    const rows: Record<string, number>[] = kept.rows.map((one) => ({ ...one }))
    for (const { row, name, text, value } of cells) {
      const place = `rows.${from + row}.${name}`
      if (value === null) {
        this.drafts.set(place, text)
        continue
      }
      this.drafts.delete(place)
      while (rows.length <= from + row) rows.push({})
      const at = rows[from + row]
      if (at !== undefined) at[name] = value
    }
    this.#keep({ ...kept, rows })
  }

  removeRow(row: number): void {
    const { kept } = this
    if (kept === null) return
    this.drafts.clear()
    this.#keep({ ...kept, rows: kept.rows.filter((_, at) => at !== row) })
  }

  setList(name: string, text: string): void {
    const { kept } = this
    if (kept === null) return
    this.drafts.set(`lists.${name}`, text)
    const list = typedReadings(name, text)
    if (list.ok) this.#keep({ ...kept, lists: { ...kept.lists, [name]: list.value } })
  }

  setInstrument(name: string, instrument: Partial<Instrument> | null): void {
    const { kept } = this
    if (kept === null) return
    const others = Object.fromEntries(Object.entries(kept.instruments).filter(([one]) => one !== name))
    this.#keep({ ...kept, instruments: instrument === null ? others : { ...others, [name]: instrument } })
  }

  setGiven(name: string, given: Given | null): void {
    const { kept } = this
    if (kept === null) return
    const others = Object.fromEntries(Object.entries(kept.given).filter(([one]) => one !== name))
    this.#keep({ ...kept, given: given === null ? others : { ...others, [name]: given } })
  }

  /** A place was left: what reads as a number shows as it is kept. */
  settle(place: string, reads: boolean): void {
    this.#workspace.session.history.closeGroup()
    if (reads) this.drafts.delete(place)
  }

  removeReadings(): void {
    this.drafts.clear()
    this.#keep({ rows: [], lists: {}, instruments: {}, given: {} })
  }

  /** Puts one result into the build with its tolerance and origin, as one step to undo; says what stands against it. */
  take({ path, value, plusMinus }: MeasuredResult, { origin }: Pick<Measurement, 'origin'>): string {
    return takeMeasured(this.#workspace, { path, value, plusMinus, origin, from: 'a measurement' })
  }

  #keep(kept: KeptReadings): void {
    const { session } = this.#workspace
    const { test } = this
    if (test === null) return
    const next = withReadings(session.stored, test, kept)
    const mistakes = session.change(`change readings: ${guideOf(test).title}`, next, `readings:${test}`)
    if (mistakes.length > 0)
      this.#workspace.notices.trouble('These readings were not kept.', 'The others stay.', mistakes)
  }
}

function withNumber(
  row: Readonly<Record<string, number>>,
  name: string,
  value: number | null,
): Readonly<Record<string, number>> {
  if (value !== null) return { ...row, [name]: value }
  return Object.fromEntries(Object.entries(row).filter(([one]) => one !== name))
}

import { SvelteMap } from 'svelte/reactivity'
import { completeBuild } from '../../shared-engine/index.ts'
import type { Measured } from '../../shared-engine/jobs/measure.ts'
import type { MeasuredResult, Measurement } from '../../shared-engine/measure/measure.ts'
import type { Instrument } from '../../shared-engine/measure/readings.ts'
import { testsTelling } from '../../shared-engine/measure/tells.ts'
import type { PastedTable } from '../../shared-engine/measure/typed-readings.ts'
import { sentenceOf } from '../../shared-engine/mistakes/catalogue.ts'
import type { Result } from '../../shared-engine/mistakes/mistake.ts'
import { guideOf, type Guide, type TestId } from '../../shared-engine/reference/measurements.ts'
import { takeMeasured } from '../fields/edits.ts'
import { Following, type Held } from '../state/following.svelte.ts'
import type { QuestionState } from '../state/question.ts'
import type { Workspace } from '../state/workspace.svelte.ts'
import { threads } from '../workers/client.ts'
import {
  keptReadings,
  noReadings,
  readingsDocument,
  withReadings,
  type Given,
  type KeptReadings,
} from './kept.ts'
import { bareText, placeWithout, textAt, withoutRow, withTyped, type Place } from './places.ts'

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
  /** What is being typed, or was and is no number, by test and place: it stays when another test is opened. */
  readonly #drafts = new SvelteMap<string, string>()
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
    this.test = test
  }

  forget(): void {
    this.work.forget()
    this.#drafts.clear()
    this.choose(null)
  }

  /** What a place shows: what is typed there and not kept, else what is kept. */
  textAt(place: Place): string {
    const { kept } = this
    if (kept === null) return ''
    const draft = this.#drafts.get(this.#draftAt(place))
    if (draft === undefined) return textAt(kept, place)
    // Undo may have taken back what stands here: only what is no number stays in the way of what is kept.
    const typed = withTyped(kept, place, draft)
    const isKept = !typed.ok || bareText(typed.value, place) === bareText(kept, place)
    return isKept ? draft : textAt(kept, place)
  }

  /** What is wrong with what stands at a place, and what counts in its stead; empty where nothing is. */
  wrongAt(place: Place): string {
    const { kept } = this
    const draft = this.#drafts.get(this.#draftAt(place))
    if (kept === null || draft === undefined) return ''
    const typed = withTyped(kept, place, draft)
    if (typed.ok) return ''
    const before = textAt(kept, place)
    const counts = before === '' ? 'the place counts as empty' : `${before} stays`
    return `${typed.mistakes.map(sentenceOf).join(' ')} Not kept: ${counts}.`
  }

  /** Places of the open test at which something stands that is not kept. */
  readonly wrongPlaces: readonly Place[] = $derived.by(() => {
    const ofThis = this.#draftAt('')
    const places = [...this.#drafts.keys()].filter((key) => key.startsWith(ofThis))
    return places.map((key) => key.slice(ofThis.length)).filter((place) => this.wrongAt(place) !== '')
  })

  /** Something was typed at a place; empty takes out what stands there. */
  typed(place: Place, text: string): void {
    const { kept } = this
    if (kept === null) return
    this.#drafts.set(this.#draftAt(place), text)
    const read = withTyped(kept, place, text)
    if (read.ok) this.#keep(read.value, { place })
  }

  /** A place was left: what reads as a number shows as it is kept. */
  settle(place: Place): void {
    this.#workspace.session.history.closeGroup()
    if (this.wrongAt(place) === '') this.#drafts.delete(this.#draftAt(place))
  }

  /** A table was pasted with its first line at this row. */
  paste(from: number, { cells }: PastedTable): void {
    const { kept } = this
    if (kept === null) return
    let next = kept
    for (const { row, name, text, value } of cells) {
      const place = `rows.${from + row}.${name}`
      if (value === null) {
        this.#drafts.set(this.#draftAt(place), text)
        continue
      }
      this.#drafts.delete(this.#draftAt(place))
      // In a table with decimal commas a cell may mean another number than it would alone.
      const alone = withTyped(next, place, text)
      const isMeant = alone.ok && alone.value.rows[from + row]?.[name] === value
      const bare = isMeant ? alone : withTyped(next, place, String(value))
      if (bare.ok) next = bare.value
    }
    this.#keep(next, { doing: 'paste' })
  }

  removeRow(row: number): void {
    const { kept } = this
    if (kept === null) return
    const ofThis = this.#draftAt('')
    const drafts = [...this.#drafts].filter(([key]) => key.startsWith(ofThis))
    for (const [key] of drafts) this.#drafts.delete(key)
    for (const [key, text] of drafts) {
      const place = placeWithout(key.slice(ofThis.length), row)
      if (place !== null) this.#drafts.set(this.#draftAt(place), text)
    }
    this.#keep(withoutRow(kept, row), { doing: 'remove a row of' })
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

  removeReadings(): void {
    const ofThis = this.#draftAt('')
    for (const key of [...this.#drafts.keys()]) if (key.startsWith(ofThis)) this.#drafts.delete(key)
    this.#keep(noReadings, { doing: 'remove' })
  }

  /** Puts one result into the build with its tolerance and origin, as one step to undo; says what stands against it. */
  take({ path, value, plusMinus }: MeasuredResult, { origin }: Pick<Measurement, 'origin'>): string {
    return takeMeasured(this.#workspace, { path, value, plusMinus, origin, from: 'a measurement' })
  }

  #draftAt(place: Place): string {
    return `${this.test ?? ''}/${place}`
  }

  /** Puts readings in force, as one step to undo; typing into one place is one step. */
  #keep(kept: KeptReadings, { place = '', doing = 'change' } = {}): void {
    const { session } = this.#workspace
    const { test } = this
    if (test === null) return
    const next = withReadings(session.stored, test, kept)
    const group = place === '' ? null : `readings:${test}:${place}`
    const mistakes = session.change(`${doing} readings: ${guideOf(test).title}`, next, group)
    if (mistakes.length > 0)
      this.#workspace.notices.trouble('These readings were not kept.', 'The others stay.', mistakes)
  }
}

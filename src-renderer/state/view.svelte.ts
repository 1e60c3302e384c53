import { tick } from 'svelte'
import { bringIntoView, putCursorInto } from './cursor.ts'
import { recall, remember } from './remembered.ts'
import type { LimitId } from '../../shared-engine/limits/id.ts'

type UnitSystem = 'metric' | 'imperial'
type Theme = 'system' | 'light' | 'dark'
const themes: readonly Theme[] = ['system', 'light', 'dark']
const systems: readonly UnitSystem[] = ['metric', 'imperial']

/** What is looked at, and how: nothing here changes the build, and nothing here is undone. */
export class View {
  #question = $state.raw('')
  /** Whether the guided start of a new build stands in the place of fields and questions. */
  starting = $state.raw(false)
  /** A part of the machine, as the power path names them: `pack`, `motor`, `stage.1`, … */
  part = $state.raw('motor')
  /** The limit chosen in the ledger: its place is marked in the plots. */
  limit = $state.raw<LimitId | null>(null)
  /** Workings opened one from another; the last one is shown. Empty: none. */
  workings = $state.raw<readonly string[]>([])
  /** Entry whose help stands under the fields: the one that has the focus, or the pointer. */
  helpFor = $state.raw<string | null>(null)
  /** What stands against the entry that is being typed into; empty: nothing. Told to readers once the typing rests. */
  trouble = $state.raw('')
  /** Entry whose origin and other forms stand open under it. */
  moreOf = $state.raw<string | null>(null)
  /** Whether the fields are drawn out, where the window is too narrow to keep them open. */
  drawerOpen = $state.raw(false)
  /** What had the focus when the working was opened. */
  #opener: Element | null = null
  units = $state.raw<UnitSystem>(recall('units', systems, 'metric'))
  theme = $state.raw<Theme>(recall('theme', themes, 'system'))
  singleKeys = $state.raw(recall('singleKeys', ['on', 'off'], 'on') === 'on')
  welcomed = $state.raw(recall('welcomed', ['yes', 'no'], 'no') === 'yes')

  constructor(question: string) {
    this.#question = question
  }

  /** Id of the question that is answered. */
  get question(): string {
    return this.#question
  }

  set question(id: string) {
    this.#question = id
    this.starting = false
  }

  setUnits(units: UnitSystem): void {
    this.units = units
    remember('units', units)
  }

  setTheme(theme: Theme): void {
    this.theme = theme
    remember('theme', theme)
    if (theme === 'system') delete document.documentElement.dataset['theme']
    else document.documentElement.dataset['theme'] = theme
  }

  nextTheme(): void {
    const index = themes.indexOf(this.theme)
    this.setTheme(themes[(index + 1) % themes.length] ?? 'system')
  }

  setSingleKeys(on: boolean): void {
    this.singleKeys = on
    remember('singleKeys', on ? 'on' : 'off')
  }

  setWelcomed(): void {
    this.welcomed = true
    remember('welcomed', 'yes')
  }

  choosePart(part: string): void {
    if (part !== this.part) {
      this.helpFor = null
      this.moreOf = null
    }
    this.part = part
    this.drawerOpen = true
    this.starting = false
  }

  /** Opens the working of a figure or limit; from within a working, on top of it. */
  openWorking(subject: string, onTop = false): void {
    if (!onTop) this.#opener = document.activeElement
    this.workings = onTop ? [...this.workings, subject] : [subject]
  }

  backInWorkings(): void {
    this.workings = this.workings.slice(0, -1)
  }

  closeWorkings(): void {
    this.workings = []
  }

  /** Closes the working and gives the focus back to what opened it. */
  async leaveWorkings(): Promise<void> {
    this.closeWorkings()
    await tick()
    if (this.#opener instanceof HTMLElement && this.#opener.isConnected) this.#opener.focus()
  }

  /** Marks a limit, shows the question that it belongs to and opens its working. */
  chooseLimit(id: LimitId, question: string | null): void {
    this.limit = id
    // The guided start stays: the working opens beside it.
    if (question !== null) this.#question = question
    this.openWorking(id)
  }

  /** Shows an entry's field without going there: another thing was done, and changed it. */
  async showEntry(part: string, path: string): Promise<void> {
    this.part = part
    await tick()
    bringIntoView(path)
  }

  /** Shows the fields of a part and puts the cursor into one of them. */
  async goToEntry(part: string, path: string): Promise<void> {
    this.choosePart(part)
    await tick()
    putCursorInto(path)
  }
}

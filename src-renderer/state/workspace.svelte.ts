import { getContext, setContext } from 'svelte'
import { curveSettingOf, driveStateAtGroundSpeed, type DriveState } from '../../shared-engine/index.ts'
import type { PathState } from '../../shared-engine/draw/part-figures.ts'
import type { CursorName } from '../../shared-engine/draw/scene.ts'
import type { Host } from '../host/host.ts'
import { Ask } from './ask.svelte.ts'
import { Files } from './files.svelte.ts'
import { Notices } from './notice.svelte.ts'
import { Operating } from './operating.svelte.ts'
import { makeStates, type Question, type QuestionState, type QuestionStateClass } from './question.ts'
import { Session } from './session.svelte.ts'
import { Tip } from './tip.svelte.ts'
import { View } from './view.svelte.ts'
import { groundSpeedOfRpm } from '../../shared-engine/vehicle/logged-speed.ts'

/** Lists and cards that can be opened over the page. */
type Sheet = 'shortcuts' | 'find' | 'recent' | 'about' | 'demos' | 'bench' | 'printed' | 'words'

/** A moment of something that was recorded: what the drawing shows of it, and words beside it. */
export interface RecordedMoment {
  readonly state: PathState
  readonly words: string
}

/** All that the page knows, as a few small classes. Components get it with {@link useWorkspace}. */
export class Workspace {
  readonly operating = new Operating()
  readonly session = new Session(this.operating)
  readonly view: View
  readonly ask = new Ask()
  readonly notices = new Notices()
  readonly tip = new Tip()
  readonly files: Files
  sheet = $state.raw<Sheet | null>(null)
  /** Whether the printable sheet, once it stands there, is to be printed at once. */
  printAsked = $state.raw(false)
  /** Entry that is to come from a measurement; null: any. */
  measured = $state.raw<string | null>(null)
  readonly host: Host

  readonly #states: ReadonlyMap<QuestionStateClass, QuestionState>

  /** @param questions those of the window, in the order of their tabs; the first one is open */
  constructor(host: Host, questions: readonly Pick<Question, 'id' | 'states'>[]) {
    this.host = host
    this.view = new View(questions[0]?.id ?? '')
    this.files = new Files(host, this.session, this.ask, this.notices, () => this.opened())
    this.#states = makeStates(questions, this)
  }

  /** The one state of its class; a class that no question lists is a bug. */
  of<State extends QuestionState>(which: QuestionStateClass<State>): State {
    const state = this.#states.get(which)
    if (!(state instanceof which)) throw new Error(`no question lists ${which.name} among its states`)
    return state
  }

  /** Throttle in force: what the strip asks for, never above the build's cap. */
  readonly throttle: number = $derived(this.session.checked.machine.controller.throttleCap)

  /** Where the speed axes end, m/s: a little past the fastest that the belt can run at the build's own cap. */
  readonly reach: number = $derived.by(() => {
    const { machine, figures } = this.session.atCap
    const free = groundSpeedOfRpm(machine, figures.freeRpm ?? 0, 0)
    return Math.max(free * 1.05, (figures.topSpeedMps ?? 0) * 1.1, 0.1)
  })

  /** Ground speed where the machine settles at the throttle in force; null where it does not get going. */
  readonly settled: number | null = $derived(this.session.checked.figures.topSpeedMps)

  /** The machine at the cursor: everything the power path and the read-outs show. */
  readonly now: DriveState = $derived.by(() => {
    const setting = curveSettingOf(this.session.checked.machine)
    return driveStateAtGroundSpeed(setting, this.operating.speedAsked ?? this.settled ?? 0)
  })

  /** Motor speed that a log shows, rpm of the shaft: a flag on plot and drawing; null: none was entered. */
  readonly loggedRpm: number | null = $derived.by(() => {
    const { logRpm, logIsElectrical } = this.operating
    if (logRpm === null) return null
    return logIsElectrical ? logRpm / this.session.checked.machine.motor.polePairs : logRpm
  })

  /** Slip that goes with a speed read from an rpm: as at top speed, else what the ground has. */
  readonly slip: number = $derived.by(() => {
    const { machine, figures } = this.session.checked
    return figures.topSlip ?? (machine.ground.model === 'coefficient' ? machine.ground.slip : 0)
  })

  /** Whoever has something recorded says here what its cursor stands on. */
  recorded: () => RecordedMoment | null = () => null

  /** What the drawing shows in place of the machine at the cursor; null: nothing recorded is looked at. */
  readonly recordedMoment: RecordedMoment | null = $derived.by(() => this.recorded())

  /** Where each shared cursor of the plots stands. */
  readonly cursors: Readonly<Record<CursorName, number | null>> = $derived({
    groundSpeed: this.now.groundSpeed,
    throttle: this.throttle,
    seconds: this.operating.secondsAsked,
    logSeconds: this.operating.logSecondsAsked,
    none: null,
  })

  /** A plot moved its cursor; null lets go of it. */
  moveCursor(name: CursorName, value: number | null): void {
    if (name === 'groundSpeed') this.operating.speedAsked = value
    if (name === 'throttle') this.operating.throttleAsked = value
    if (name === 'seconds') this.operating.secondsAsked = value
    if (name === 'logSeconds') this.operating.logSecondsAsked = value
  }

  get isMac(): boolean {
    return this.host.facts.platform === 'mac'
  }

  /** What had the focus before the printable sheet took the place of the page. */
  beforeSheet: Element | null = null

  /** Puts the printable sheet in the place of the page. */
  showPrinted(print: boolean): void {
    this.beforeSheet = document.activeElement
    this.printAsked = print
    this.sheet = 'printed'
  }

  /** The word of the glossary that was asked about; empty: none in particular. */
  askedWord = $state.raw('')

  /** Opens the glossary at a word. */
  explain(word: string): void {
    this.askedWord = word
    this.sheet = 'words'
  }

  /** Opens the guided tests of an entry, or of all where it has none. */
  measure(path: string | null): void {
    this.measured = path
    this.sheet = 'bench'
  }

  /** Another build was opened: what belonged to the last one is let go. */
  private opened(): void {
    this.operating.reset()
    this.view.limit = null
    this.view.starting = false
    this.view.closeWorkings()
    for (const state of this.#states.values()) state.forget()
  }
}

const key = Symbol('workspace')

export function provideWorkspace(workspace: Workspace): Workspace {
  return setContext(key, workspace)
}

export function useWorkspace(): Workspace {
  return getContext<Workspace>(key)
}

import { type Mistake, type StoredBuild } from '../../../shared-engine/index.ts'
import { choicesText } from '../../../shared-engine/search/verdict.ts'
import type { SearchOutcome } from '../../../shared-engine/search/outcome.ts'
import type { CandidateChoice } from '../../../shared-engine/search/candidate-build.ts'
import { withChoices } from '../../../shared-engine/search/candidate-build.ts'
import { choicesOf, planOf, type SearchPlan } from '../../../shared-engine/search/space.ts'
import type { StoredSpace } from '../../../shared-engine/search/space-schema.ts'
import { searchJob } from '../../../shared-engine/jobs/search.ts'
import { formOf, placeOf, spaceOf, spaceTrouble, startingForm, type SearchForm } from './form.ts'
import { threads, type JobHandle } from '../../workers/client.ts'
import type { QuestionState } from '../../state/question.ts'
import type { Workspace } from '../../state/workspace.svelte.ts'

/** What a search found, with what it was asked. */
export interface Found {
  readonly plan: SearchPlan
  readonly space: StoredSpace
  readonly outcome: SearchOutcome
  /** Null while it runs. */
  readonly end: 'finished' | 'stopped' | 'failed' | null
  readonly seconds: number
}

/** *Which gears*: what is asked, the search that runs, what it found. */
export class SearchWork implements QuestionState {
  readonly #workspace: Workspace
  /** As typed, and the machine that it was typed for; another machine starts anew. */
  #typed = $state.raw<{ readonly machine: string; readonly form: SearchForm } | null>(null)
  running = $state.raw<{
    readonly done: number
    readonly total: number
    readonly secondsLeft: number | null
  } | null>(null)
  found = $state.raw<Found | null>(null)
  /** Whether what is asked is in view; folded away once a search is begun. */
  asking = $state(true)
  #job: JobHandle | null = null

  constructor(workspace: Workspace) {
    this.#workspace = workspace
  }

  readonly form: SearchForm = $derived.by(() => {
    const { stored } = this.#workspace.session
    if (this.#typed !== null && this.#typed.machine === machineKey(stored)) return this.#typed.form
    return startingForm(stored, this.#workspace.view.units)
  })

  /** What is asked as a space, its size, and everything that is wrong with it. */
  readonly asked = $derived.by(() => {
    const { session, view } = this.#workspace
    const { space, troubles } = spaceOf(this.form, session.stored, view.units)
    const plan = planOf(session.stored, space)
    const paths = this.form.rows.map((row) => row.path)
    const told: Record<string, string> = { ...troubles }
    for (const mistake of plan.ok ? [] : plan.mistakes)
      told[placeOf(mistake, paths)] ??= spaceTrouble(mistake)
    const sound = plan.ok && Object.keys(troubles).length === 0
    return { space, plan: sound && plan.ok ? plan.value : null, troubles: told }
  })

  /** Whether what was found still answers what is asked: the same space, on a build that differs only in what is varied. */
  readonly isCurrent: boolean = $derived.by(() => {
    const { found } = this
    if (found === null) return false
    if (JSON.stringify(this.asked.space) !== JSON.stringify(found.space)) return false
    const { stored } = this.#workspace.session
    return stored === found.plan.stored || sameMachine(found.plan, stored)
  })

  change(part: Partial<SearchForm>): void {
    this.#typed = { machine: machineKey(this.#workspace.session.stored), form: { ...this.form, ...part } }
  }

  takeSpace(space: StoredSpace): void {
    const { session, view } = this.#workspace
    this.change(formOf(space, session.stored, view.units))
    this.asking = true
  }

  begin(): void {
    const { plan, space } = this.asked
    if (plan === null) return
    this.change({})
    this.asking = false
    const { stored } = this.#workspace.session
    this.found = null
    this.running = { done: 0, total: plan.total, secondsLeft: null }
    this.#job = threads.start(
      'search',
      searchJob,
      { stored, space },
      {
        progress: ({ done, total, secondsLeft, outcome }) => {
          this.running = { done, total, secondsLeft }
          this.found = { plan, space, outcome, end: null, seconds: 0 }
        },
        ended: ({ end, outcome, seconds }) => {
          this.running = null
          this.#job = null
          this.found = { plan, space, outcome, end: end.type, seconds }
          this.#workspace.notices.spoken = `Search ${end.type}: ${outcome.holding} of ${outcome.looked} hold everything.`
        },
      },
    )
  }

  stop(): void {
    this.#job?.stop()
  }

  /** Another build was opened. */
  forget(): void {
    this.#job?.drop()
    this.#job = null
    this.running = null
    this.found = null
    this.asking = true
  }

  /** Shows a candidate everywhere without taking it; null: the open build again. */
  look(choices: readonly CandidateChoice[] | null): void {
    const { session } = this.#workspace
    if (choices === null) session.show(null)
    else if (this.isCurrent)
      session.show({ stored: withChoices(session.stored, choices), words: choicesText(choices) })
  }

  /** Takes a candidate into the open build, as one undoable step. */
  take(choices: readonly CandidateChoice[]): readonly Mistake[] {
    if (!this.isCurrent) return []
    const { session, notices } = this.#workspace
    const words = choicesText(choices)
    const mistakes = session.change(`take gearing ${words}`, withChoices(session.stored, choices))
    if (mistakes.length > 0)
      notices.trouble('This candidate could not be taken.', 'The build is as it was.', mistakes)
    else notices.spoken = `Taken: ${words}. Undo takes it back.`
    return mistakes
  }
}

/** A machine of another name or another train starts with a form of its own. */
function machineKey({ name, stages }: StoredBuild): string {
  return `${name}|${(stages ?? []).map((stage) => stage.kind).join()}`
}

function sameMachine(plan: SearchPlan, stored: StoredBuild): boolean {
  const first = choicesOf(plan, 0)
  const told = (build: StoredBuild) =>
    JSON.stringify({ ...withChoices(build, first), notes: '', origins: {} })
  return told(stored) === told(plan.stored)
}

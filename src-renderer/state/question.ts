import type { Component } from 'svelte'
import type { Workspace } from './workspace.svelte.ts'

/** What one question keeps while the window lives: what is asked, the work that runs, what it found. */
export interface QuestionState {
  /** Another build was opened: what belonged to the last one is let go. */
  forget(): void
}

export type QuestionStateClass<State extends QuestionState = QuestionState> = new (
  workspace: Workspace,
) => State

/** One question of the window, as its tab names it: what a builder asks. */
export interface Question {
  readonly id: string
  /** Its place among the tabs, lowest first. */
  readonly place: number
  readonly label: string
  /** The view that answers. */
  readonly Answer: Component
  /** Made with the workspace, one of each: `workspace.of(SearchWork)`. */
  readonly states: readonly QuestionStateClass[]
  /** Files that it takes when they are dropped on the window, by the ends of their names; it is shown then. */
  readonly dropped?: {
    readonly endings: readonly string[]
    readonly take: (workspace: Workspace, file: File) => void
  }
}

/** One of each state that a window's questions list, by its class. */
export function makeStates(
  questions: readonly Pick<Question, 'states'>[],
  workspace: Workspace,
): ReadonlyMap<QuestionStateClass, QuestionState> {
  const classes = questions.flatMap(({ states }) => states)
  return new Map(classes.map((State) => [State, new State(workspace)]))
}

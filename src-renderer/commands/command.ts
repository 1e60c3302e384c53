import type { Workspace } from '../state/workspace.svelte.ts'

/**
 * One thing that a person can do; the menu, its key and every button for it run the same object.
 *
 * @see table.ts for all of them
 */
export interface Command {
  /** As the native menu names it. */
  readonly id: string
  /** What it does, in the words of a menu. */
  readonly label: string
  /** What it would do now, where that changes: the name of the step that undo takes back. */
  detail?(workspace: Workspace): string | null
  readonly heading: 'File' | 'Edit' | 'View' | 'Help'
  /** Keys that run it, the first one shown: `Mod+Shift+Z` (Mod is Ctrl, or Command on a Mac), `Alt+1`, `F1`, `?`. */
  readonly keys: readonly string[]
  /** Whether it can be done now. */
  when(workspace: Workspace): boolean
  do(workspace: Workspace): void | Promise<void>
  /** What undo remembers of it: a change of the build, or nothing because only the view or a file is touched. */
  readonly capture: 'build' | 'nothing'
}

export const always = (): boolean => true

import type { Workspace } from '../state/workspace.svelte.ts'
import { commandOf, isSingleKey } from './keys.ts'
import { commands } from './table.ts'

function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement &&
    target.matches('input:not([type=range]), textarea, select, [contenteditable]')
  )
}

/** Runs the command of a key press; does nothing while a question waits for its answer. */
export function onKey(event: KeyboardEvent, workspace: Workspace): void {
  if (workspace.ask.open !== null || workspace.sheet !== null) return
  const { isMac, view } = workspace
  const command = commandOf(commands, event, isMac, view.singleKeys && !isTyping(event.target))
  if (command === null) return
  if (isTyping(event.target) && command.keys.every(isSingleKey)) return
  event.preventDefault()
  if (command.when(workspace)) void command.do(workspace)
}

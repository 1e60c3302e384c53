import type { Command } from './command.ts'
import type { Workspace } from '../state/workspace.svelte.ts'
import { threads } from '../workers/client.ts'

/**
 * Ties the window to its host, for as long as the page lives: what it was opened for, its menu's commands, the title,
 * unsaved work kept against a crash.
 */
export function connect(workspace: Workspace, commands: readonly Command[]): void {
  const { host, files, session, view } = workspace
  view.setTheme(view.theme)
  threads.onLost = ({ begunAgain, failed }) => {
    const next =
      failed > 0
        ? 'What it worked on broke off. Your build is untouched; try again, with less to look at.'
        : `${begunAgain > 0 ? 'What it worked on was begun anew. ' : ''}Your build is untouched.`
    // eslint-disable-next-line no-console -- the one record of it where nobody looks at the page
    console.error(`a worker thread ended unasked; begun again: ${begunAgain}, broken off: ${failed}`)
    workspace.notices.trouble('A thread of the program ended unasked, perhaps for want of memory.', next)
  }
  $effect(() =>
    host.listen((event) => {
      if (event.kind === 'close-asked') void files.close()
      else if (event.kind === 'changed-outside') files.noteChangedOutside(event.handle, event.gone)
      else {
        const command = commands.find((one) => one.id === event.id)
        if (command?.when(workspace) === true) void command.do(workspace)
      }
    }),
  )
  // Told only where one of them differs: with each telling, the host makes its menu anew.
  const name = $derived(session.isOpen ? files.title : null)
  const undo = $derived(session.isOpen ? session.history.undoName : null)
  const redo = $derived(session.isOpen ? session.history.redoName : null)
  const unsaved = $derived(session.isDirty)
  $effect(() => {
    if (name !== null) host.show({ name, unsaved, undo, redo })
  })
  $effect(() => {
    if (!session.isOpen) return
    void session.stored // with every change
    files.noteChange()
  })
  void files.start()
}

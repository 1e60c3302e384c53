import { machinePicture } from '../../shared-engine/draw/machine-picture.ts'
import { limitsText } from '../limits/limits-text.ts'
import { copyText } from '../host/clipboard.ts'
import { pngFile } from '../plots/export.ts'
import { saveFile } from '../questions/shared/save-file.ts'
import { fileName } from '../state/files.svelte.ts'
import type { Workspace } from '../state/workspace.svelte.ts'
import { always, type Command } from './command.ts'

async function saveDrawing(workspace: Workspace): Promise<void> {
  const { session, view, files, notices } = workspace
  const scene = machinePicture(session.checked, view.units)
  try {
    const { kind, content } = await pngFile({ ...scene, title: files.title }, '')
    await saveFile(workspace, kind, `${fileName(files.title)}-machine.png`, content)
  } catch {
    notices.trouble('The picture could not be made.', 'The build is as it was.')
  }
}

/** What leaves the program as a picture or as words. */
export const shareCommands: readonly Command[] = [
  {
    id: 'file.drawing',
    label: 'Save the drawing as a picture…',
    heading: 'File',
    keys: [],
    when: ({ session }) => session.isOpen,
    do: saveDrawing,
    capture: 'nothing',
  },
  {
    id: 'edit.copyLimits',
    label: 'Copy the limits as text',
    heading: 'Edit',
    keys: [],
    when: always,
    do: async ({ session, view, notices }) => {
      const copied = await copyText(limitsText(session.checked.limits, view.units))
      if (copied)
        notices.tell('The limits are on the clipboard.', 'They go into columns of a spreadsheet.', [])
      else notices.trouble('The clipboard is not to be had.', 'Nothing was copied.')
    },
    capture: 'nothing',
  },
]

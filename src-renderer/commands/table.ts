import { benchCommands } from './bench.ts'
import type { Command } from './command.ts'
import { compareCommands } from './compare.ts'
import { editCommands } from './edit.ts'
import { fileCommands } from './file.ts'
import { helpCommands } from './help.ts'
import { shareCommands } from './share.ts'
import { sheetCommands } from './sheet.ts'
import { viewCommands } from './view.ts'

/** Every command of the window. The native menu, the keys, the list of shortcuts and the buttons run these. */
export const commands: readonly Command[] = [
  ...fileCommands,
  ...shareCommands,
  ...sheetCommands,
  ...editCommands,
  ...benchCommands,
  ...compareCommands,
  ...viewCommands,
  ...helpCommands,
]

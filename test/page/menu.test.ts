import { expect, it } from 'vitest'
import { menuOf } from '../../src-main/shell/menu.ts'
import { commands } from '../../src-renderer/commands/table.ts'

it.each(['mac', 'windows', 'linux'] as const)(
  'each entry of the menu on %s is a command of the page, with its usual key where it shows one',
  (platform) => {
    for (const entry of menuOf(platform).flatMap(({ entries }) => [...entries])) {
      if (!('id' in entry)) continue
      const command = commands.find(({ id }) => id === entry.id)
      expect(command, entry.id).toBeDefined()
      if (entry.keys !== undefined) {
        expect(command?.keys, entry.id).toContain(entry.keys.replace('CmdOrCtrl', 'Mod'))
      }
    }
  },
)

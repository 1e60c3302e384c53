import { describe, expect, it } from 'vitest'
import { menuOf, type MenuEntry } from '../../src-main/shell/menu.ts'

const platforms = ['mac', 'windows', 'linux'] as const
const entriesOf = (platform: (typeof platforms)[number]): MenuEntry[] =>
  menuOf(platform).flatMap(({ entries }) => [...entries])
const keysOf = (entry: MenuEntry) => ('keys' in entry && entry.keys !== undefined ? [entry.keys] : [])

describe.each(platforms)('the menu on %s', (platform) => {
  const entries = entriesOf(platform)
  const mac = platform === 'mac'

  it('has no key twice and no command twice', () => {
    const keys = entries.flatMap(keysOf).map((key) => key.replace('CmdOrCtrl', mac ? 'Cmd' : 'Ctrl'))
    expect(keys.filter((key, index) => keys.indexOf(key) !== index)).toEqual([])
    const ids = entries.flatMap((entry) => ('id' in entry ? [entry.id] : []))
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([])
  })

  it.each([
    ['file.new', 'CmdOrCtrl+N'],
    ['file.open', 'CmdOrCtrl+O'],
    ['file.save', 'CmdOrCtrl+S'],
    ['file.saveAs', 'CmdOrCtrl+Shift+S'],
    ['edit.undo', 'CmdOrCtrl+Z'],
    ['edit.redo', 'CmdOrCtrl+Shift+Z'],
    ['help.shortcuts', 'F1'],
  ])('has the usual key of %s', (id, keys) => {
    expect(entries.find((entry) => 'id' in entry && entry.id === id)).toMatchObject({ keys })
  })

  it('has the usual ways to zoom and quit', () => {
    const roles = entries.flatMap((entry) => ('role' in entry ? [entry.role] : []))
    expect(roles).toEqual(expect.arrayContaining(['zoomIn', 'zoomOut', 'resetZoom', 'quit', 'close']))
    expect(entries.find((entry) => 'role' in entry && entry.role === 'quit')).toMatchObject({
      keys: mac ? 'Cmd+Q' : 'Ctrl+Q',
    })
  })
})

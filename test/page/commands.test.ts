import { describe, expect, it } from 'vitest'
import { commandOf, isPress, keyLabel } from '../../src-renderer/commands/keys.ts'
import { commands } from '../../src-renderer/commands/table.ts'

const press = (
  key: string,
  held: Partial<Record<'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey', boolean>> = {},
) => ({
  key,
  ctrlKey: false,
  metaKey: false,
  altKey: false,
  shiftKey: false,
  ...held,
})

describe('commands', () => {
  it('have ids and keys of their own', () => {
    const ids = commands.map((command) => command.id)
    const keys = commands.flatMap((command) => command.keys)
    expect(new Set(ids).size).toBe(ids.length)
    expect(new Set(keys).size).toBe(keys.length)
  })

  it('are found by their key, with Command for Ctrl on a Mac', () => {
    expect(commandOf(commands, press('z', { ctrlKey: true }), false, true)?.id).toBe('edit.undo')
    expect(commandOf(commands, press('Z', { ctrlKey: true, shiftKey: true }), false, true)?.id).toBe(
      'edit.redo',
    )
    expect(commandOf(commands, press('y', { ctrlKey: true }), false, true)?.id).toBe('edit.redo')
    expect(commandOf(commands, press('s', { metaKey: true }), true, true)?.id).toBe('file.save')
    expect(commandOf(commands, press('s', { ctrlKey: true }), true, true)).toBeNull()
  })

  it.each([false, true])(
    'each do what their keys say, pressed as a person presses them (a Mac: %s)',
    (mac) => {
      const pressed = commands.flatMap((command) =>
        command.keys.map((combination) => ({ command, combination })),
      )
      expect(pressed.length).toBeGreaterThan(25)
      for (const { command, combination } of pressed) {
        const parts = combination.split('+')
        const key = parts.at(-1) ?? ''
        const held = {
          ctrlKey: parts.includes('Mod') && !mac,
          metaKey: parts.includes('Mod') && mac,
          altKey: parts.includes('Alt'),
          shiftKey: parts.includes('Shift'),
        }
        // A letter comes as a small one, and as a large one with Shift.
        const typed = key.length === 1 && !held.shiftKey ? key.toLowerCase() : key
        expect(commandOf(commands, press(typed, held), mac, true)?.id, combination).toBe(command.id)
      }
    },
  )

  it('have the usual keys of a desktop program', () => {
    // GNOME Human Interface Guidelines, Standard keyboard shortcuts; F1 and Ctrl+Y as Windows has them (from memory).
    const usual = {
      'file.new': ['Mod+N'],
      'file.open': ['Mod+O'],
      'file.save': ['Mod+S'],
      'file.saveAs': ['Mod+Shift+S'],
      'file.print': ['Mod+P'],
      'edit.undo': ['Mod+Z'],
      'edit.redo': ['Mod+Shift+Z', 'Mod+Y'],
      'edit.find': ['Mod+F'],
      'help.shortcuts': ['F1'],
      'view.region': ['F6'],
    }
    for (const [id, keys] of Object.entries(usual))
      expect(commands.find((command) => command.id === id)?.keys, id).toEqual(expect.arrayContaining(keys))
  })

  it('of a single key can be turned off, and work whether or not the sign needs Shift', () => {
    expect(commandOf(commands, press('?', { shiftKey: true }), false, true)?.id).toBe('help.shortcuts')
    expect(commandOf(commands, press('?'), false, true)?.id).toBe('help.shortcuts')
    expect(commandOf(commands, press('?', { shiftKey: true }), false, false)).toBeNull()
    expect(commandOf(commands, press('F1'), false, false)?.id).toBe('help.shortcuts')
  })

  it('are printed as the platform prints keys', () => {
    expect(keyLabel('Mod+Shift+Z', false)).toBe('Ctrl+Shift+Z')
    expect(keyLabel('Mod+Shift+Z', true)).toBe('⌘⇧Z')
    expect(isPress('Alt+1', press('1', { altKey: true }), false)).toBe(true)
  })
})

import { app, Menu, type MenuItemConstructorOptions } from 'electron'
import { menuOf, type MenuEntry } from './menu.ts'
import { factsOf, type Windows } from './windows.ts'

/** Shows the table of menu.ts as the system's menu; Undo and Redo say what they would do. */
export function setupMenu(windows: Windows): { refresh: () => void } {
  const refresh = () => {
    const headings = menuOf(factsOf().platform).map(({ label, entries }) => ({
      label,
      submenu: entries.map((entry) => itemOf(entry, windows)),
    }))
    Menu.setApplicationMenu(Menu.buildFromTemplate(headings))
  }
  app.on('browser-window-focus', refresh)
  refresh()
  return { refresh }
}

function itemOf(entry: MenuEntry, windows: Windows): MenuItemConstructorOptions {
  if ('line' in entry) return { type: 'separator' }
  const { label, keys: accelerator } = entry
  if ('role' in entry) return { role: entry.role, label, accelerator }
  const { id } = entry
  return {
    id,
    label: labelOf(id, entry.label, windows),
    enabled: isEnabled(id, windows),
    accelerator,
    // The page hears these keys itself, also in a browser: the menu only shows them, or they would act twice.
    registerAccelerator: false,
    click: () => {
      const ours = windows.focused() ?? windows.all()[0]
      if (ours) windows.send(ours.owner, { kind: 'command', id })
    },
  }
}

function labelOf(id: string, label: string, windows: Windows): string {
  const shown = windows.focused()?.shown
  const what = id === 'edit.undo' ? shown?.undo : id === 'edit.redo' ? shown?.redo : null
  return what ? `${label} ${what}` : label
}

function isEnabled(id: string, windows: Windows): boolean {
  const shown = windows.focused()?.shown
  if (!shown) return true
  if (id === 'edit.undo') return shown.undo !== null
  if (id === 'edit.redo') return shown.redo !== null
  return true
}

/**
 * The native menu as a table. An entry with an `id` is one of the page's commands (src-renderer/commands has the same
 * ids; a test compares): the menu only names it. An entry with a `role` is the system's own.
 */
export type MenuEntry =
  | { readonly id: string; readonly label: string; readonly keys?: string }
  | { readonly role: SystemRole; readonly label?: string; readonly keys?: string }
  | { readonly line: true }

type SystemRole =
  | 'quit'
  | 'close'
  | 'cut'
  | 'copy'
  | 'paste'
  | 'selectAll'
  | 'resetZoom'
  | 'zoomIn'
  | 'zoomOut'
  | 'togglefullscreen'
  | 'minimize'
  | 'hide'
  | 'hideOthers'
  | 'unhide'
  | 'services'

interface MenuHeading {
  readonly label: string
  readonly entries: readonly MenuEntry[]
}

const line = { line: true } as const
const about: MenuEntry = { id: 'help.about', label: 'About Pitchline' }

const file = (mac: boolean): MenuHeading => ({
  label: 'File',
  entries: [
    { id: 'file.new', label: 'New build', keys: 'CmdOrCtrl+N' },
    { id: 'window.new', label: 'New window', keys: 'CmdOrCtrl+Shift+N' },
    { id: 'file.open', label: 'Open…', keys: 'CmdOrCtrl+O' },
    { id: 'file.recent', label: 'Recent files…', keys: 'CmdOrCtrl+Shift+O' },
    { id: 'file.demos', label: 'Demo builds…' },
    line,
    { id: 'file.save', label: 'Save', keys: 'CmdOrCtrl+S' },
    { id: 'file.saveAs', label: 'Save as…', keys: 'CmdOrCtrl+Shift+S' },
    { id: 'file.revert', label: 'Revert to saved' },
    line,
    { id: 'file.sheet', label: 'Sheet to print', keys: 'Alt+P' },
    { id: 'file.print', label: 'Print the sheet…', keys: 'CmdOrCtrl+P' },
    line,
    { role: 'close', label: 'Close window', keys: 'CmdOrCtrl+W' },
    ...(mac ? [] : [{ role: 'quit', label: 'Quit', keys: 'Ctrl+Q' } as const]),
  ],
})

const edit: MenuHeading = {
  label: 'Edit',
  entries: [
    { id: 'edit.undo', label: 'Undo', keys: 'CmdOrCtrl+Z' },
    { id: 'edit.redo', label: 'Redo', keys: 'CmdOrCtrl+Shift+Z' },
    line,
    { role: 'cut' },
    { role: 'copy' },
    { role: 'paste' },
    { role: 'selectAll' },
    line,
    { id: 'edit.find', label: 'Find…', keys: 'CmdOrCtrl+F' },
    { id: 'edit.measure', label: 'From a measurement…', keys: 'Alt+M' },
  ],
}

const view: MenuHeading = {
  label: 'View',
  entries: [
    { id: 'view.units', label: 'Metric or imperial units', keys: 'Alt+U' },
    { id: 'view.theme', label: 'Light, dark or as the system', keys: 'Alt+T' },
    line,
    { role: 'zoomIn', keys: 'CmdOrCtrl+=' },
    { role: 'zoomOut', keys: 'CmdOrCtrl+-' },
    { role: 'resetZoom', keys: 'CmdOrCtrl+0' },
    { role: 'togglefullscreen', keys: 'F11' },
  ],
}

const help = (mac: boolean): MenuHeading => ({
  label: 'Help',
  entries: [
    { id: 'help.shortcuts', label: 'Shortcuts', keys: 'F1' },
    { id: 'help.words', label: 'Words and what they mean' },
    ...(mac ? [] : [line, about]),
  ],
})

const application: MenuHeading = {
  label: 'Pitchline',
  entries: [
    about,
    line,
    { role: 'services' },
    line,
    { role: 'hide' },
    { role: 'hideOthers' },
    { role: 'unhide' },
    line,
    { role: 'quit', keys: 'Cmd+Q' },
  ],
}

/** The menu of a platform. */
export function menuOf(platform: 'mac' | 'windows' | 'linux'): readonly MenuHeading[] {
  const mac = platform === 'mac'
  return [...(mac ? [application] : []), file(mac), edit, view, help(mac)]
}

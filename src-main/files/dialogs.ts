import { existsSync } from 'node:fs'
import path from 'node:path'
import { dialog, type BrowserWindow, type FileFilter } from 'electron'
import { withEnding } from './ending.ts'

const everything: FileFilter = { name: 'All files', extensions: ['*'] }
const filters = {
  build: { name: 'Builds', extensions: ['json'] },
  svg: { name: 'Drawing (SVG)', extensions: ['svg'] },
  png: { name: 'Picture (PNG)', extensions: ['png'] },
  csv: { name: 'Table (CSV)', extensions: ['csv'] },
  pdf: { name: 'Document (PDF)', extensions: ['pdf'] },
  html: { name: 'Page (HTML)', extensions: ['html'] },
  md: { name: 'Text (Markdown)', extensions: ['md'] },
  json: { name: 'Data (JSON)', extensions: ['json'] },
} satisfies Record<string, FileFilter>

/** Where the last dialog ended, for the next one. */
let folder = ''

/** Asks which build to open; `null` for none. */
export async function askOpen(window: BrowserWindow): Promise<string | null> {
  const { canceled, filePaths } = await dialog.showOpenDialog(window, {
    title: 'Open a build',
    defaultPath: folder,
    properties: ['openFile'],
    filters: [filters.build, everything],
  })
  return canceled ? null : remembered(filePaths[0])
}

/** Asks where to save; the system asks about overwriting. The ending is added where none was typed. */
export async function askSave(
  window: BrowserWindow,
  kind: keyof typeof filters,
  suggested: string,
): Promise<string | null> {
  const ending = kind === 'build' ? '.build.json' : `.${kind}`
  const { canceled, filePath } = await dialog.showSaveDialog(window, {
    defaultPath: path.join(folder, suggested.endsWith(ending) ? suggested : `${suggested}${ending}`),
    filters: [filters[kind], everything],
    properties: ['showOverwriteConfirmation', 'createDirectory'],
  })
  if (canceled || !filePath) return null
  return remembered(withEnding(filePath, ending, existsSync))
}

function remembered(file: string | undefined): string | null {
  if (file === undefined) return null
  folder = path.dirname(file)
  return file
}

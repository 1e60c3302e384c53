import type { Result } from '../../shared-engine/mistakes/mistake.ts'
import type { Paper } from '../../shared-engine/report/paper.ts'

/**
 * What stands round the page: the desktop window (through the bridge) or a browser (through its pickers). The page
 * uses nothing else of either, and never meets a file's path: a file is a handle that only its host understands.
 *
 * Trouble is a value (`Result`); `null` means that the person cancelled. Nothing here throws.
 */
export interface Host {
  readonly facts: HostFacts
  /** Our own demo builds, the first one for the first start. Bundled: nothing is fetched. */
  readonly demos: readonly Demo[]

  /** What this window was opened for. Ask once, before anything else. */
  start(): Promise<Start>

  /** Asks for a build with the system's dialog. */
  open(): Promise<Result<OpenedFile> | null>
  /** Reads an open file again: to revert, or to look at what another program made of it. */
  read(handle: FileHandle): Promise<Result<OpenedFile>>
  /** A file dropped on the page. Logs are read straight from the `File`; this is for builds, which are saved again. */
  openDropped(file: File): Promise<Result<OpenedFile>>

  /** The page no longer works on this file (another build was opened in its place): another window may have it. */
  release(handle: FileHandle): void

  /** Newest first, at most 12. */
  recent(): Promise<readonly RecentFile[]>
  openRecent(id: string): Promise<Result<OpenedFile>>
  clearRecent(): Promise<void>

  /**
   * Writes to the file it came from: the old text or the new one, never a mix. Refused with the mistake
   * `file-changed-outside` where the file is no longer what `fingerprint` says; `'overwrite'` saves all the same.
   */
  save(handle: FileHandle, saved: SavedText, fingerprint: string | 'overwrite'): Promise<Result<SavedFile>>
  /** Asks for a name and place first. */
  saveAs(suggestedName: string, saved: SavedText): Promise<Result<SavedFile> | null>
  /** A drawing or a table, written where the person says. The answer is the file's name. */
  exportFile(kind: ExportKind, suggestedName: string, content: Uint8Array): Promise<Result<string> | null>

  /**
   * The page as it prints, as a PDF where the person says. The answer is the file's name. Null where the host cannot: a
   * browser's own printing has it.
   */
  readonly exportPdf: ((paper: Paper, suggestedName: string) => Promise<Result<string> | null>) | null

  /** Keeps unsaved work against a crash or power cut. Call within 1 s of a change; replaces what was kept before. */
  keep(work: UnsavedWork): Promise<Result<null>>
  /** After saving, or when work is given up: nothing is left to recover. */
  forget(): Promise<void>
  /** Throws away one piece of recovered work, because the person said so. */
  discardRecovered(id: string): Promise<void>

  /** For the title bar, the menu, and the question on closing. Call whenever one of them changes. */
  show(state: ShownState): void
  newWindow(): void
  /** The answer to `close-asked`, after Save or Discard (true) or Cancel (false). */
  answerClose(close: boolean): void

  /** Tells every event to `listener` until the function it answers with is called. */
  listen(listener: (event: HostEvent) => void): () => void
}

export interface HostFacts {
  readonly kind: 'window' | 'browser'
  readonly platform: 'mac' | 'windows' | 'linux'
  /** Version of the program and of what runs it, for *About*. */
  readonly version: string
  /** What it was built from; empty where that has no history. */
  readonly commit: string
  readonly runtime: string
}

/** Opaque: which file, known to the host only. */
export type FileHandle = string

export interface OpenedFile {
  readonly handle: FileHandle
  /** Name without folder, for the title. */
  readonly name: string
  readonly bytes: Uint8Array
  /** What the file was when it was read; goes back with `save`. */
  readonly fingerprint: string
}

/** What is saved. */
export interface SavedText {
  readonly text: string
  /** How often {@link Host.keep} had been asked when this text stood: what was kept later is newer than it. */
  readonly keeps: number
}

export interface SavedFile {
  readonly handle: FileHandle
  readonly name: string
  readonly fingerprint: string
}

export interface Demo {
  /** File name without `.build.json`. */
  readonly id: string
  readonly text: string
}

export interface RecentFile {
  readonly id: string
  readonly name: string
  /** Folder, shortened for reading; empty where the host does not know it. */
  readonly place: string
  /** No longer there. */
  readonly missing: boolean
}

type ExportKind = 'svg' | 'png' | 'csv' | 'html' | 'md' | 'json'

export interface Start {
  /** The build named on the command line or by the file manager; `null`: show a demo. */
  readonly opened: Result<OpenedFile> | null
  /** Work that was never saved, newest first: to be offered, never opened over anything unasked. */
  readonly recovered: readonly RecoveredWork[]
  /** This page replaces one that crashed; its own work is the first of `recovered`. */
  readonly afterCrash: boolean
}

export interface UnsavedWork {
  readonly name: string
  /** The build as text, in the form in which it would be saved. */
  readonly text: string
  /** The file it belongs to, `null` for a new one. */
  readonly handle: FileHandle | null
  readonly fingerprint: string | null
}

export interface RecoveredWork {
  readonly id: string
  readonly name: string
  readonly text: string
  /** When it was kept: ISO 8601. */
  readonly keptAt: string
  /** The file it belongs to as it is now; `null` for a new one or where it is gone. */
  readonly file: OpenedFile | null
  /** That file was changed after the work on it began. */
  readonly fileChangedSince: boolean
}

export interface ShownState {
  readonly name: string
  readonly unsaved: boolean
  /** What undo and redo would do ("change the sprocket"), `null` for nothing. */
  readonly undo: string | null
  readonly redo: string | null
}

export type HostEvent =
  /** A menu entry was chosen; the ids are those of src-main/shell/menu.ts. */
  | { readonly kind: 'command'; readonly id: string }
  /** The window is about to close with unsaved work: ask Save, Discard or Cancel, then `answerClose`. */
  | { readonly kind: 'close-asked' }
  /** Another program changed, or removed, a file that is open here. */
  | { readonly kind: 'changed-outside'; readonly handle: FileHandle; readonly gone: boolean }

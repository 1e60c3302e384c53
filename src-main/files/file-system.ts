import { constants } from 'node:fs'
import {
  access,
  lstat,
  mkdir,
  open,
  readdir,
  readFile,
  readlink,
  rename,
  stat,
  unlink,
} from 'node:fs/promises'

/**
 * The few calls that saving and keeping need, so that tests can put a failing disk in their place. Each may throw
 * what Node throws (`code` says what); trouble.ts turns that into a mistake.
 */
export interface FileSystem {
  readFile(path: string): Promise<Uint8Array>
  /** Follows links. */
  stat(path: string): Promise<FileFacts>
  isLink(path: string): Promise<boolean>
  readLink(path: string): Promise<string>
  /** Throws unless this account may write to the file. */
  assertWritable(path: string): Promise<void>
  /** A new file, refused where one of this name exists. */
  create(path: string, mode: number): Promise<OpenForWriting>
  rename(from: string, to: string): Promise<void>
  remove(path: string): Promise<void>
  list(folder: string): Promise<readonly string[]>
  makeFolder(folder: string): Promise<void>
  /** Makes names that came or went in a folder survive a power cut. */
  syncFolder(folder: string): Promise<void>
}

export interface FileFacts {
  readonly isFile: boolean
  readonly size: number
  /** Permission bits only. */
  readonly mode: number
  /** Numbers of the account and the group that it belongs to. */
  readonly owner: number
  readonly group: number
}

export interface OpenForWriting {
  /** May write less than it was given; answers how much. */
  write(bytes: Uint8Array): Promise<number>
  setMode(mode: number): Promise<void>
  setOwner(owner: number, group: number): Promise<void>
  sync(): Promise<void>
  close(): Promise<void>
}

/** The disk itself. */
export const diskFileSystem: FileSystem = {
  readFile: (path) => readFile(path),
  async stat(path) {
    const stats = await stat(path)
    const { size, uid: owner, gid: group } = stats
    return { isFile: stats.isFile(), size, mode: stats.mode & 0o7777, owner, group }
  },
  isLink: async (path) => (await lstat(path)).isSymbolicLink(),
  readLink: (path) => readlink(path),
  assertWritable: (path) => access(path, constants.W_OK),
  async create(path, mode) {
    const file = await open(path, 'wx', mode)
    return {
      write: async (bytes) => (await file.write(bytes)).bytesWritten,
      setMode: (bits) => file.chmod(bits),
      setOwner: (owner, group) => file.chown(owner, group),
      sync: () => file.sync(),
      close: () => file.close(),
    }
  },
  rename: (from, to) => rename(from, to),
  remove: (path) => unlink(path),
  list: (folder) => readdir(folder),
  async makeFolder(folder) {
    await mkdir(folder, { recursive: true })
  },
  async syncFolder(folder) {
    // Windows has no such call, and keeps names safe by itself.
    if (process.platform === 'win32') return
    const handle = await open(folder, 'r')
    try {
      await handle.sync()
    } finally {
      await handle.close()
    }
  },
}

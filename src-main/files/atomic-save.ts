import { createHash, randomBytes } from 'node:crypto'
import path from 'node:path'
import { succeeded, type Result } from '../../shared-engine/mistakes/mistake.ts'
import type { FileFacts, FileSystem, OpenForWriting } from './file-system.ts'
import { fingerprintNow, fingerprintOf } from './read.ts'
import { codeOf, failedBy, fileFailed } from './trouble.ts'

const keptBoth = 'the file as it was, and your work in this window'

interface SaveOrder {
  readonly file: string
  readonly bytes: Uint8Array
  /** What the file may hold now (any of these), or `'anything'`: to overwrite, or to write a new file. */
  readonly replaces: readonly string[] | 'anything'
}

/**
 * Writes a file so that a crash, a full disk or a power cut leaves the old content or the new one, never a mix: a
 * new file in the same folder, its content forced to the disk, put in the old one's place in one step, and the folder
 * forced to the disk. Keeps the old file's permissions, its owner where this account may, and follows links. Answers the new fingerprint.
 *
 * *Source:* POSIX `rename`: the name always means the old file or the new one; it says nothing of a power cut, hence
 * both syncs (Pillai et al., "All file systems are not created equal", OSDI 2014).
 */
export async function saveAtomically(disk: FileSystem, order: SaveOrder): Promise<Result<string>> {
  let file = order.file
  try {
    file = await linkTargetOf(disk, order.file)
    const facts = await factsOf(disk, file)
    const refusal = await refusalOf(disk, file, facts, order.replaces)
    if (refusal) return refusal
    await replace(disk, file, order.bytes, facts)
  } catch (thrown) {
    return failedBy(thrown, 'write', file, keptBoth)
  }
  const fingerprint = fingerprintOf(order.bytes)
  try {
    await disk.syncFolder(path.dirname(file))
  } catch (thrown) {
    // Some network disks have no such call; that is no fault of this save.
    const cannotSync = ['EINVAL', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS'].includes(codeOf(thrown))
    if (!cannotSync)
      return fileFailed('disk-unconfirmed', file, 'the new content, and your work in this window')
  }
  await removeLeftovers(disk, file)
  return succeeded(fingerprint)
}

/** Bytes of a name that leave room for what is put round it: systems take 255. */
const mostOfName = 200

/** The name of what is written beside a file: its own with a mark, cut where the whole would be too long. */
function besideName(file: string, mark: string): string {
  const name = path.basename(file)
  if (Buffer.byteLength(name) <= mostOfName) return `.${name}.${mark}.new`
  const sum = createHash('sha256').update(name).digest('hex').slice(0, 12)
  // Cut by letters, each of at most four bytes, so that no letter is taken apart.
  return `.${[...name].slice(0, Math.floor(mostOfName / 4) - 4).join('')}.${sum}.${mark}.new`
}

/** What saves that a power cut or a kill ended left beside the file. Only the names that `replace` gives. */
async function removeLeftovers(disk: FileSystem, file: string): Promise<void> {
  const folder = path.dirname(file)
  const isLeftover = (name: string) => {
    const mark = name.slice(-'.new'.length - 12, -'.new'.length)
    return /^[0-9a-f]{12}$/.test(mark) && name === besideName(file, mark)
  }
  try {
    const names = (await disk.list(folder)).filter(isLeftover)
    for (const name of names) await disk.remove(path.join(folder, name))
  } catch {
    // The save itself is done; the next one tries again.
  }
}

/** Where a link leads in the end; the file itself where it is none. */
async function linkTargetOf(disk: FileSystem, file: string): Promise<string> {
  let target = path.resolve(file)
  for (let steps = 0; steps < 40; steps++) {
    if (!(await isLink(disk, target))) return target
    target = path.resolve(path.dirname(target), await disk.readLink(target))
  }
  return target
}

async function isLink(disk: FileSystem, file: string): Promise<boolean> {
  try {
    return await disk.isLink(file)
  } catch (thrown) {
    if (codeOf(thrown) === 'ENOENT') return false
    throw thrown
  }
}

async function factsOf(disk: FileSystem, file: string): Promise<FileFacts | null> {
  try {
    return await disk.stat(file)
  } catch (thrown) {
    if (codeOf(thrown) === 'ENOENT') return null
    throw thrown
  }
}

/** Why the file may not be replaced, `null` where it may. */
async function refusalOf(
  disk: FileSystem,
  file: string,
  facts: FileFacts | null,
  replaces: SaveOrder['replaces'],
): Promise<Result<string> | null> {
  if (facts && !facts.isFile) return fileFailed('is-a-folder', file, keptBoth)
  // A rename asks the folder, not the file, for permission: without this a write-protected file would be replaced.
  if (facts && (facts.mode & 0o222) === 0) return fileFailed('file-read-only', file, keptBoth)
  if (facts) await disk.assertWritable(file)
  if (replaces === 'anything') return null
  const now = await fingerprintNow(disk, file)
  if (now === null) return fileFailed('file-gone', file, 'your work in this window')
  return replaces.includes(now) ? null : fileFailed('file-changed-outside', file, keptBoth)
}

/** Writes beside the file, then takes its place. Throws what the disk throws, with nothing left beside. */
async function replace(disk: FileSystem, file: string, bytes: Uint8Array, facts: FileFacts | null) {
  const beside = path.join(path.dirname(file), besideName(file, randomBytes(6).toString('hex')))
  const opened = await disk.create(beside, 0o666)
  try {
    await writeAll(opened, bytes, facts)
    await renamePatiently(disk, beside, file)
  } catch (thrown) {
    await disk.remove(beside).catch(() => undefined)
    throw thrown
  }
}

/** Only an administrator may give a file away: for anyone else it is theirs who save it, as with any other program. */
async function keepOwner(opened: OpenForWriting, { owner, group }: FileFacts): Promise<void> {
  try {
    await opened.setOwner(owner, group)
  } catch (thrown) {
    const isNotDone = ['EPERM', 'EINVAL', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS'].includes(codeOf(thrown))
    if (!isNotDone) throw thrown
  }
}

async function writeAll(opened: OpenForWriting, bytes: Uint8Array, facts: FileFacts | null) {
  try {
    for (let written = 0; written < bytes.length;) {
      const count = await opened.write(bytes.subarray(written))
      if (count <= 0) throw Object.assign(new Error('nothing was written'), { code: 'ENOSPC' })
      written += count
    }
    if (facts !== null) {
      // The mode comes after, as a change of owner takes some of its bits.
      await keepOwner(opened, facts)
      await opened.setMode(facts.mode)
    }
    await opened.sync()
  } catch (thrown) {
    await opened.close().catch(() => undefined)
    throw thrown
  }
  // A close that fails can mean a write that failed: it is not swallowed.
  await opened.close()
}

/** Virus scanners on Windows hold a new file for a moment; elsewhere the first answer stands. */
async function renamePatiently(disk: FileSystem, from: string, to: string) {
  const waits = process.platform === 'win32' ? [20, 50, 100, 200, 400] : []
  for (const wait of waits) {
    try {
      return await disk.rename(from, to)
    } catch (thrown) {
      if (!['EPERM', 'EBUSY', 'EACCES'].includes(codeOf(thrown))) throw thrown
      await new Promise((done) => setTimeout(done, wait))
    }
  }
  await disk.rename(from, to)
}

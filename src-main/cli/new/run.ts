import { closeSync, existsSync, fsyncSync, openSync, unlinkSync, writeSync } from 'node:fs'
import path from 'node:path'
import { writeBuild } from '../../../shared-engine/entries/write.ts'
import type { Mistake } from '../../../shared-engine/mistakes/mistake.ts'
import { oneLine } from '../../../shared-engine/mistakes/shown.ts'
import { entriesPage } from './entries-page.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io.ts'
import { startingPoint } from './starting-point.ts'
import { mistake, report } from '../trouble.ts'

/** Writes the starting point and the page of entries beside it; neither overwrites, and there are both or none. */
export function writeNewBuild(typed: string, io: Io): number {
  if (typed.trim() === '' || /[\\/]$/.test(typed)) {
    const allowed = 'pitchline new <file>'
    return report(io, 'pitchline', [mistake('missing-argument', { value: 'a name for the file', allowed })])
  }
  const file = typed.endsWith('.json') ? typed : `${typed}.build.json`
  const page = `${file.replace(/(\.build)?\.json$/, '')}.entries.txt`
  const taken = [file, page].filter((name) => existsSync(name))
  for (const name of taken) report(io, name, [exists])
  if (taken.length > 0) return exit.unreadable
  const made: string[] = []
  for (const [name, text] of [
    [file, writeBuild(startingPoint)],
    [page, entriesPage()],
  ] as const) {
    try {
      writeAnew(name, text, made)
    } catch (thrown) {
      made.forEach((done) => unlinkSync(done))
      return report(io, name, [cannotWrite(thrown)])
    }
  }
  const [build, entries, next] = [file, page, path.normalize(file)].map((name) => oneLine(name, 200))
  io.out(`${build} written: a build to start from\n${entries} written: what each entry means\n`)
  io.out(`Next: pitchline check ${next}\n`)
  return exit.within
}

/** @param made takes the name in as soon as the file is there, so that a disk that fills up leaves nothing of it */
function writeAnew(name: string, text: string, made: string[]): void {
  // `x`: a file that came to be since it was looked for is not overwritten either.
  const open = openSync(name, 'wx')
  made.push(name)
  try {
    const bytes = Buffer.from(text)
    for (let at = 0; at < bytes.length;) at += writeSync(open, bytes, at)
    fsyncSync(open)
  } finally {
    closeSync(open)
  }
}

const exists = mistake('file-exists', { value: 'a file of this name', allowed: 'another name' })

/** What the system says where a file can grow no further: the disk, the person's share of it, or a limit is full. */
const noRoom: ReadonlySet<string> = new Set(['ENOSPC', 'EDQUOT', 'EFBIG'])

function cannotWrite(thrown: unknown): Mistake {
  const code = thrown instanceof Error ? (thrown as NodeJS.ErrnoException).code : undefined
  if (code === undefined) throw thrown
  if (code === 'EEXIST') return exists
  if (noRoom.has(code)) return mistake('disk-full', { value: 'this file' })
  const value =
    code === 'ENOENT' || code === 'ENOTDIR' ? 'there is no such folder' : `the system says ${code}`
  return mistake('cannot-write', { value })
}

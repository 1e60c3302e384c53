import { existsSync, unlinkSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { writeBuild } from '../../../shared-engine/entries/write.ts'
import { entriesPage } from './entries-page.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io.ts'
import { startingPoint } from './starting-point.ts'
import { mistake, tell } from '../trouble.ts'

/** Writes the starting point and the page of entries beside it; neither overwrites. */
export function writeNewBuild(typed: string, io: Io): number {
  const file = typed.endsWith('.json') ? typed : `${typed}.build.json`
  const page = `${file.replace(/(\.build)?\.json$/, '')}.entries.txt`
  const taken = [file, page].filter((name) => existsSync(name))
  if (taken.length > 0) {
    const mistakes = taken.map(() =>
      mistake('file-exists', { value: 'a file of this name', allowed: 'another name' }),
    )
    return taken.map((name, index) => tell(io, name, mistakes.slice(index, index + 1)))[0] ?? exit.unreadable
  }
  const written: string[] = []
  for (const [name, text] of [
    [file, writeBuild(startingPoint)],
    [page, entriesPage()],
  ] as const) {
    try {
      // `wx`: a file that came to be since it was looked for is not overwritten either.
      writeFileSync(name, text, { flag: 'wx' })
      written.push(name)
    } catch (thrown) {
      written.forEach((done) => unlinkSync(done))
      return tell(io, name, [cannotWrite(thrown)])
    }
  }
  io.out(`${file} written: a build to start from\n${page} written: what each entry means\n`)
  io.out(`Next: pitchline check ${path.normalize(file)}\n`)
  return exit.within
}

function cannotWrite(thrown: unknown) {
  const code = thrown instanceof Error ? (thrown as NodeJS.ErrnoException).code : undefined
  if (code === undefined) throw thrown
  if (code === 'EEXIST')
    return mistake('file-exists', { value: 'a file of this name', allowed: 'another name' })
  const value =
    code === 'ENOENT' || code === 'ENOTDIR' ? 'there is no such folder' : `the system says ${code}`
  return mistake('cannot-write', { value })
}

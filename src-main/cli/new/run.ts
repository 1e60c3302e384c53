import { existsSync, unlinkSync } from 'node:fs'
import path from 'node:path'
import { writeBuild } from '../../../shared-engine/entries/write.ts'
import { oneLine } from '../../../shared-engine/mistakes/shown.ts'
import { entriesPage } from './entries-page.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io.ts'
import { startingPoint } from './starting-point.ts'
import { mistake, report } from '../trouble.ts'
import { cannotWrite, fileExists, writeAnew } from '../write-anew.ts'

/** Writes the starting point and the page of entries beside it; neither overwrites, and there are both or none. */
export function writeNewBuild(typed: string, io: Io): number {
  if (typed.trim() === '' || /[\\/]$/.test(typed)) {
    const allowed = 'pitchline new <file>'
    return report(io, 'pitchline', [mistake('missing-argument', { value: 'a name for the file', allowed })])
  }
  const file = typed.endsWith('.json') ? typed : `${typed}.build.json`
  const page = `${file.replace(/(\.build)?\.json$/, '')}.entries.txt`
  const taken = [file, page].filter((name) => existsSync(name))
  for (const name of taken) report(io, name, [fileExists])
  if (taken.length > 0) return exit.unreadable
  const made: string[] = []
  for (const [name, text] of [
    [file, writeBuild(startingPoint)],
    [page, entriesPage()],
  ] as const) {
    try {
      writeAnew(name, Buffer.from(text))
      made.push(name)
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

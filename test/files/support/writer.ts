import path from 'node:path'
import { saveAtomically } from '../../../src-main/files/atomic-save.ts'
import { diskFileSystem as disk } from '../../../src-main/files/file-system.ts'
import { fingerprintOf } from '../../../src-main/files/read.ts'
import { Journal } from '../../../src-main/files/journal.ts'
import { contentOf } from './versions.ts'

/** A program that saves and keeps, version after version, until it is killed; it says which it has finished. */
const [folder = '', from = '0'] = process.argv.slice(2)
const file = path.join(folder, 'sled.build.json')
const journal = new Journal(disk, path.join(folder, 'unsaved'))
const entry = journal.begin()

let fingerprint: string | null = null
for (let version = Number(from); ; version++) {
  const text = contentOf(version)
  const kept = await journal.keep(entry, {
    name: String(version),
    text,
    file,
    fingerprint,
    known: [],
    keptAt: new Date(version).toISOString(),
  })
  const replaces = fingerprint === null ? ('anything' as const) : [fingerprint]
  const saved = await saveAtomically(disk, { file, bytes: new TextEncoder().encode(text), replaces })
  if (!kept.ok || !saved.ok) throw new Error(JSON.stringify({ kept, saved }))
  fingerprint = fingerprintOf(new TextEncoder().encode(text))
  process.stdout.write(`${version}\n`)
}

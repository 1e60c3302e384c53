import { writeFileSync } from 'node:fs'
import path from 'node:path'
import { glossaryPage } from '../shared-engine/explain/glossary.ts'

/** Where the page lies. */
const glossaryFile = path.join('docs', 'glossary.md')

/** `node scripts/run.js glossary`: the words that the window explains, as a page. */
export function run(): Promise<number> {
  writeFileSync(glossaryFile, glossaryPage())
  console.log(`Wrote ${glossaryFile}.`)
  return Promise.resolve(0)
}

import { writeFileSync } from 'node:fs'
import path from 'node:path'
import { validationCases } from './validation/case.ts'
import { validationPage } from './validation/page.ts'

/** Where the page lies. */
export const validationFile = path.join('docs', 'validation.md')

/** `node scripts/run.js validation`: what was measured on other machines beside the engine's figures, as a page. */
export async function run(): Promise<number> {
  writeFileSync(validationFile, validationPage(validationCases()))
  console.log(`Wrote ${validationFile}.`)
  return 0
}

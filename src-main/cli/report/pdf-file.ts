import { createRequire } from 'node:module'
import { fileURLToPath } from 'node:url'
import type { Sheet } from '../../../shared-engine/report/block.ts'
import type { Paper } from '../../../shared-engine/report/paper.ts'

/** A PDF, and the letters that its typeface lacks. */
interface Pdf {
  readonly bytes: Uint8Array
  readonly lacking: readonly string[]
}

/** What pdf.ts gives. */
interface PdfFile {
  readonly sheetPdf: (sheet: Sheet, paper: Paper) => Promise<Pdf>
}

/** Where pdf.ts is built to, beside the file that this one is built into; a bundle of everything would start later. */
const entry = new URL('./pdf.cjs', import.meta.url)

/** The sheet as a PDF, by the file that only this loads. */
export function sheetPdf(sheet: Sheet, paper: Paper): Promise<Pdf> {
  const file = createRequire(import.meta.url)(fileURLToPath(entry)) as PdfFile
  return file.sheetPdf(sheet, paper)
}

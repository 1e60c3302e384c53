import { check, type Checked } from '../../../shared-engine/check.ts'
import { readBuild } from '../../../shared-engine/entries/read.ts'
import { oneLine } from '../../../shared-engine/mistakes/shown.ts'
import { remediesFor } from '../../../shared-engine/remedy/remedy.ts'
import { sheetHtml } from '../../../shared-engine/report/html.ts'
import { sheetMarkdown } from '../../../shared-engine/report/markdown.ts'
import { papers, type Paper } from '../../../shared-engine/report/paper.ts'
import { sheetOf } from '../../../shared-engine/report/sheet.ts'
import type { Sheet } from '../../../shared-engine/report/block.ts'
import { readingOf } from '../build-file.ts'
import type { OptionValues } from '../command.ts'
import { exit, exitOf } from '../exit.ts'
import type { Io } from '../io.ts'
import { systemOf } from '../option-values.ts'
import { mistake, report } from '../trouble.ts'
import { cannotWrite, writeAnew } from '../write-anew.ts'

const forms = ['pdf', 'html', 'md'] as const
type Form = (typeof forms)[number]

/** What is written, and where: null stands for standard output. */
interface Target {
  readonly form: Form
  readonly file: string | null
}

/** Writes or prints the sheet of a build; gives the exit code. */
export async function reportBuild(file: string, options: OptionValues, io: Io): Promise<number> {
  const target = targetOf(options, io)
  if (target === null) return exit.unreadable
  const build = readingOf(file, readBuild, io)
  if (build === null) return exit.unreadable
  const found = check(build.value)
  const checked: Checked = { ...found, notes: [...build.notes, ...found.notes] }
  const sheet = sheetOf(checked, {
    system: systemOf(options),
    date: dayOf(options),
    workings: options['workings'] === true,
    whole: options['all'] === true,
    remedies: remediesFor(build.value),
  })
  const paper = papers.find((one) => one === options['paper']) ?? 'a4'
  if (target.file === null) {
    io.out(textOf(sheet, target.form, paper))
    return exitOf(checked.limits)
  }
  return (await write(sheet, { ...target, file: target.file }, paper, io))
    ? exitOf(checked.limits)
    : exit.unreadable
}

/** Null after what stands against it has been reported. */
function targetOf(options: OptionValues, io: Io): Target | null {
  const { output, html } = options
  if (output === undefined) return { form: html === true ? 'html' : 'md', file: null }
  const file = String(output)
  const form = forms.find((ending) => file.toLowerCase().endsWith(`.${ending}`))
  if (form !== undefined && (html !== true || form === 'html')) return { form, file }
  const allowed =
    html === true ? 'with --html, a name that ends in .html' : 'a name that ends in .pdf, .html or .md'
  report(io, 'pitchline', [
    mistake('not-one-of', { path: '--output', value: `"${oneLine(file, 60)}"`, allowed }),
  ])
  return null
}

/** The day as given, or the present one where the machine stands. */
function dayOf({ date }: OptionValues): string {
  if (typeof date === 'string') return date
  const now = new Date()
  const two = (number: number) => String(number).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

function textOf(sheet: Sheet, form: Form, paper: Paper): string {
  return form === 'html' ? sheetHtml(sheet, paper) : sheetMarkdown(sheet)
}

async function bytesOf(sheet: Sheet, form: Form, paper: Paper, io: Io): Promise<Uint8Array> {
  if (form !== 'pdf') return Buffer.from(textOf(sheet, form, paper))
  const { sheetPdf } = await import('./pdf-file.ts')
  const { bytes, lacking } = await sheetPdf(sheet, paper)
  if (lacking.length > 0) {
    const named = oneLine(lacking.slice(0, 20).join(' '), 60)
    io.err(`The PDF’s typeface lacks ${named}: ? stands there. A file that ends in .html or .md has them.\n`)
  }
  return bytes
}

/** Whether the file is there now; what stood against it has been reported otherwise. */
async function write(
  sheet: Sheet,
  { form, file }: Target & { readonly file: string },
  paper: Paper,
  io: Io,
): Promise<boolean> {
  const bytes = await bytesOf(sheet, form, paper, io)
  try {
    writeAnew(file, bytes)
  } catch (thrown) {
    report(io, file, [cannotWrite(thrown)])
    return false
  }
  io.out(`${oneLine(file, 200)} written\n`)
  return true
}

import { sentenceOf } from '../../shared-engine/mistakes/catalogue.ts'
import type { Mistake } from '../../shared-engine/mistakes/mistake.ts'
import { oneLine } from '../../shared-engine/mistakes/shown.ts'
import { exit } from './exit.ts'
import type { Io } from './io.ts'

/** As many mistakes as a person reads; of a file with more, the rest are counted. */
const mostReported = 50

/** Reports each mistake on a line of its own, behind the file (or command) it concerns; gives the exit code. */
export function report(io: Io, where: string, mistakes: readonly Mistake[]): number {
  const sentences = mistakes.slice(0, mostReported).map(sentenceOf)
  const more = mistakes.length - sentences.length
  if (more > 0) sentences.push(`${more.toLocaleString('en')} more mistakes are not listed.`)
  // A name of nothing but spaces is shown in quotes: without them nobody would see which file is meant.
  const shown = where.trim() === '' ? `"${where}"` : oneLine(where, 200)
  const lines = sentences.map((sentence) => `${shown}: ${sentence}\n`)
  io.err(lines.join(''))
  return exit.unreadable
}

/** Work was stopped before anything of it was in. */
export function reportStopped(io: Io, where: string): number {
  report(io, where, [mistake('stopped-early')])
  return exit.stopped
}

/** A mistake with what is known of it. */
export function mistake(code: Mistake['code'], details: Partial<Omit<Mistake, 'code'>> = {}): Mistake {
  return { code, path: '', value: '', allowed: '', kept: '', ...details }
}

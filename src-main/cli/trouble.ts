import { sentenceOf } from '../../shared-engine/mistakes/catalogue.ts'
import type { Mistake } from '../../shared-engine/mistakes/mistake.ts'
import { oneLine } from '../../shared-engine/mistakes/shown.ts'
import { exit } from './exit.ts'
import type { Io } from './io.ts'

/** Tells each mistake on a line of its own, behind the file (or command) it concerns; gives the exit code. */
export function tell(io: Io, where: string, mistakes: readonly Mistake[]): number {
  const lines = mistakes.map((mistake) => `${oneLine(where, 200)}: ${sentenceOf(mistake)}\n`)
  io.err(lines.join(''))
  return exit.unreadable
}

/** A mistake with what is known of it. */
export function mistake(code: Mistake['code'], details: Partial<Omit<Mistake, 'code'>> = {}): Mistake {
  return { code, path: '', value: '', allowed: '', kept: '', ...details }
}

import type { Mistake } from '../../../shared-engine/mistakes/mistake.ts'
import { shown } from '../../../shared-engine/mistakes/shown.ts'
import type { PartFile } from '../parts/file.ts'
import { mistake } from '../trouble.ts'

/** What the keys of an input are called where two differ. */
const words: Readonly<Record<string, string>> = { stored: 'build', request: 'sweep' }

/** Why a part does not belong to the run of the first one; null where it does. */
export function unlikeFirst(firstName: string, first: PartFile, part: PartFile): Mistake | null {
  const differs = differencesOf(first, part)
  if (differs.length === 0) return null
  return mistake('part-of-another-run', { value: firstName, allowed: differs.join('; ') })
}

function differencesOf(first: PartFile, part: PartFile): readonly string[] {
  if (first.job !== part.job) return [`${part.job} instead of ${first.job}`]
  const keys = [...new Set([...Object.keys(first.input), ...Object.keys(part.input)])]
  const inputs = keys.flatMap((key) => difference(words[key] ?? key, first.input[key], part.input[key]))
  const [own, others] = [Object.entries(part.program), first.program as Readonly<Record<string, unknown>>]
  const programs = own.flatMap(([key, value]) => difference(`program’s ${key}`, others[key], value))
  return [...inputs, ...programs, ...difference('count of parts', first.part.of, part.part.of)]
}

/** Single values are shown; a build or a space is only named. */
function difference(name: string, one: unknown, other: unknown): readonly string[] {
  if (JSON.stringify(one) === JSON.stringify(other)) return []
  const large = [one, other].some((value) => value !== null && typeof value === 'object')
  return [large ? `another ${name}` : `${name} ${shown(other)} instead of ${shown(one)}`]
}

/** Parts named where more are missing would fill the screen. */
const mostNamed = 12

/** The parts that are missing; null where none is. */
export function missingFrom(of: number, there: ReadonlyMap<number, unknown>): Mistake | null {
  if (there.size >= of) return null
  const missing = Array.from({ length: of }, (_, at) => at + 1).filter((number) => !there.has(number))
  const more = missing.length - mostNamed
  const named = `${missing.slice(0, mostNamed).join(', ')}${more > 0 ? ` and ${more.toLocaleString('en')} more` : ''}`
  return mistake('part-missing', { value: `${named} of ${of.toLocaleString('en')}` })
}

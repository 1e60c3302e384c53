import type { SpreadBy, TolerancedEntry } from './entries.ts'

type Known = Pick<TolerancedEntry, 'by'>

const origins = ['measured', 'stated', 'guessed', 'assumed'] as const satisfies readonly SpreadBy[]

/**
 * Whose spread is by what, by path: "measured: vehicle.massKg; guessed: ground.turnFriction"; empty where every entry has a
 * tolerance of its own.
 */
export function spreadByOrigin(entries: readonly Pick<TolerancedEntry, 'by' | 'path'>[]): string {
  return origins
    .flatMap((origin) => {
      const paths = entries.filter(({ by }) => by === origin).map(({ path }) => path)
      return paths.length === 0 ? [] : [`${origin}: ${paths.join(', ')}`]
    })
    .join('; ')
}

/** How many entries vary, and why: "19 entries, 8 by their tolerance and 11 by where they come from". */
export function entriesWords(entries: readonly Known[]): string {
  const typed = entries.filter(({ by }) => by === 'tolerance').length
  const rest = entries.length - typed
  const whole = entries.length === 1 ? 'one entry' : `${entries.length} entries`
  const [theirs, they] = entries.length === 1 ? ['its', 'it comes'] : ['their', 'they come']
  if (rest === 0) return `${whole}, by ${theirs} tolerance`
  if (typed === 0) return `${whole}, by where ${they} from`
  return `${whole}, ${typed} by tolerance and ${rest} by where they come from`
}

import { assumedPaths } from '../assume/assumed.ts'
import { evaluate } from '../cases/evaluate.ts'
import { Evaluation } from '../cases/evaluation.ts'
import type { Checked } from '../check.ts'
import { entryAt, replaced } from '../entries/edit.ts'
import { fieldOf } from '../entries/fields.ts'
import { keysOf } from '../entries/path.ts'
import { brokenRulesOf } from '../entries/rules.ts'
import type { Build } from '../entries/schema.ts'
import { figuresOf, type FigureName } from '../figures/table.ts'
import { machineOf } from '../machine/machine.ts'
import { tolerancedEntriesOf } from './entries.ts'

/** Significant figures of each figure that deserves no more; the rest are known to as many as are shown of an exact one. */
export type Sureness = ReadonlyMap<FigureName, 2 | 3>

/**
 * From this relative spread on a third figure says nothing: the last of two is a step of 1 to 10 %.
 * *Source:* ISO/IEC Guide 98-3 (JCGM 100:2008), 7.2.6 (a value ends where its uncertainty begins); the share is our decision.
 */
const leastForTwo = 0.05
/** Below it the usual three or four figures are all known. */
const leastForThree = 0.005

/** Share by which a count is moved that nobody has entered. *Source:* assumption, as for other assumed entries. */
const assumedCount = 0.4

interface Moved {
  readonly path: string
  readonly to: number
}

/**
 * How many figures each number deserves: every entry that is known only so well is put to the end of its spread, one at a
 * time, and what the numbers then move by is added up in squares.
 *
 * r = √Σ ((f(x_k + w_k) − f) / f)²: 2 figures from r = 5 % on, 3 from 0.5 %.
 *
 * @param checked a build worked out; nothing of it is changed
 * *Source:* ISO/IEC Guide 98-3 (JCGM 100:2008), 5.1.2, by differences in place of derivatives; entries taken as independent.
 */
export function surenessOf({ build, figures }: Pick<Checked, 'build' | 'figures'>): Sureness {
  const squares = new Map<FigureName, number>()
  const names = Object.keys(figures) as FigureName[]
  for (const moved of movedOf(build)) {
    const then = figuresWith(build, moved)
    if (then === null) continue
    for (const name of names) {
      const now = figures[name]
      if (now === null || now === 0) continue
      // A number that is there or not by what is not known is known to one figure at most.
      const share = then[name] === null ? 1 : (then[name] - now) / now
      squares.set(name, (squares.get(name) ?? 0) + share * share)
    }
  }
  return new Map(
    [...squares].flatMap(([name, square]): [FigureName, 2 | 3][] => {
      const spread = Math.sqrt(square)
      return spread < leastForThree ? [] : [[name, spread < leastForTwo ? 3 : 2]]
    }),
  )
}

function movedOf(build: Build): readonly Moved[] {
  const vague = tolerancedEntriesOf(build).entries.map(({ path, nominal, plusMinus, low, high }) => ({
    path,
    to: nominal + plusMinus <= high ? nominal + plusMinus : Math.max(low, nominal - plusMinus),
  }))
  const counts = assumedPaths(build).flatMap((path): Moved[] => {
    const [field, value] = [fieldOf(path), entryAt(build, path)]
    if (field?.whole !== true || typeof value !== 'number') return []
    return [{ path, to: Math.min(field.high ?? Infinity, Math.ceil(value * (1 + assumedCount))) }]
  })
  return [...vague, ...counts]
}

/** Figures of the build with another entry; null where the entries then contradict each other. */
function figuresWith(build: Build, { path, to }: Moved): Checked['figures'] | null {
  const other = replaced(build, keysOf(path), to) as Build
  if (brokenRulesOf(other).length > 0) return null
  const machine = machineOf(other)
  const evaluation = new Evaluation()
  evaluate(evaluation, machine)
  return figuresOf(evaluation, machine)
}

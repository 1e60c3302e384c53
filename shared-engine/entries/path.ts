/** Groups whose keys are themselves paths of entries, dots included: `tolerances` → `stages.0.ratio`. */
const keyedByPath: ReadonlySet<string> = new Set(['tolerances', 'origins', 'readings'])
const toleranceKey = /^(.*)\.(plusMinusPercent|plusMinus|shape)$/

/** The most paths whose keys and patterns are kept: a build has a few hundred, files may bring any. */
const mostKept = 4096

/** A function of a path that keeps its answers: the same few hundred paths are asked for at every reading of a build. */
function kept<Answer>(answer: (path: string) => Answer): (path: string) => Answer {
  const answers = new Map<string, Answer>()
  return (path) => {
    const before = answers.get(path)
    if (before !== undefined) return before
    if (answers.size >= mostKept) answers.clear()
    const given = answer(path)
    answers.set(path, given)
    return given
  }
}

/**
 * The keys of a path in order. What follows `tolerances.` or `origins.` is one key, since it is itself a path.
 *
 * @example keysOf('tolerances.stages.0.ratio.shape') // ['tolerances', 'stages.0.ratio', 'shape']
 */
export const keysOf = kept((path): readonly string[] => {
  if (path === '') return []
  const dot = path.indexOf('.')
  const group = dot < 0 ? path : path.slice(0, dot)
  if (dot < 0 || !keyedByPath.has(group)) return path.split('.')
  const rest = path.slice(dot + 1)
  const inner = group === 'tolerances' ? toleranceKey.exec(rest) : null
  return inner?.[1] === undefined || inner[2] === undefined ? [group, rest] : [group, inner[1], inner[2]]
})

/** Whether a key is a place in a list. */
export function isListIndex(key: string): boolean {
  return /^(0|[1-9][0-9]{0,8})$/.test(key)
}

/**
 * A path with lists and freely named keys written as `*`: the key of the table of fields.
 *
 * @example patternOf('stages.0.ratio') // 'stages.*.ratio'
 */
export const patternOf = kept((path): string => {
  const keys = keysOf(path)
  const [group = ''] = keys
  return keys
    .map((key, at) => (isListIndex(key) || (at === 1 && keyedByPath.has(group)) ? '*' : key))
    .join('.')
})

/** What stands at keys inside a value; undefined where nothing does. Own keys only. */
export function valueAt(value: unknown, keys: readonly string[]): unknown {
  let at = value
  for (const key of keys) {
    if (typeof at !== 'object' || at === null) return undefined
    if (Array.isArray(at) ? !isListIndex(key) : !Object.hasOwn(at, key)) return undefined
    at = (at as Readonly<Record<string, unknown>>)[key]
  }
  return at
}

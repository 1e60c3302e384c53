/** Deeper than any build; far from what a reader could choke on. */
export const mostDepth = 16

/** What a text in JSON gives away before it is parsed. */
interface Scan {
  /** Nested deeper than `mostDepth`. */
  readonly tooDeep: boolean
  /** Paths of keys that stand twice in the same group, of which a parser would silently keep the last. */
  readonly duplicates: readonly string[]
}

interface Level {
  readonly keys: Set<string> | null
  /** The key, or the place in a list, at which the scan is. */
  at: string
  expectsKey: boolean
}

/** Where a string literal that begins at `start` ends: one past its closing quote, or the end of the text. */
function endOfString(text: string, start: number): number {
  let at = start + 1
  while (at < text.length && text[at] !== '"') at += text[at] === '\\' ? 2 : 1
  return Math.min(at + 1, text.length)
}

function decoded(literal: string): string {
  try {
    return String(JSON.parse(literal))
  } catch {
    return literal
  }
}

function enter(levels: Level[], isList: boolean): void {
  levels.push({ keys: isList ? null : new Set(), at: isList ? '0' : '', expectsKey: !isList })
}

function nextItem(level: Level | undefined): void {
  if (level === undefined) return
  if (level.keys === null) level.at = String(Number(level.at) + 1)
  else level.expectsKey = true
}

/** One pass over a text, sound or not, in time that grows with its length; never throws. */
export function scanJson(text: string): Scan {
  const levels: Level[] = []
  const duplicates = new Set<string>()
  for (let at = 0; at < text.length; at += 1) {
    const mark = text[at]
    const level = levels.at(-1)
    if (mark === '{' || mark === '[') {
      if (levels.length >= mostDepth) return { tooDeep: true, duplicates: [...duplicates] }
      enter(levels, mark === '[')
    } else if (mark === '}' || mark === ']') levels.pop()
    else if (mark === ',') nextItem(level)
    else if (mark === '"') {
      const end = endOfString(text, at)
      if (level?.keys && level.expectsKey) {
        level.at = decoded(text.slice(at, end))
        level.expectsKey = false
        if (level.keys.has(level.at)) duplicates.add(levels.map((each) => each.at).join('.'))
        level.keys.add(level.at)
      }
      at = end - 1
    }
  }
  return { tooDeep: false, duplicates: [...duplicates] }
}

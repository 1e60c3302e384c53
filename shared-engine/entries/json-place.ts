/** One piece of JSON, after white space; strings without a nested repeat, so that long ones take linear time. */
const piece =
  /[ \t\r\n]*(?:([{}[\],:])|("[^"\\\0-\x1f]*(?:\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})[^"\\\0-\x1f]*)*")|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?(?![\w.])|true\b|false\b|null\b)/y

/** What may come next: a value, a key, the colon after it, or a comma or closing bracket after a value. */
type Next = 'value' | 'key' | 'colon' | 'after'

interface State {
  next: Next
  /** Whether a closing bracket may stand in place of the next value or key: just after the opening one. */
  mayClose: boolean
  /** Opening brackets that are not closed yet. */
  readonly open: string[]
}

const toValue = (state: State, next: Next): true => {
  state.next = next
  state.mayClose = false
  return true
}

/** Closes the innermost bracket where that is of the right kind and may be closed here. */
function close(state: State, mark: string): boolean {
  if (!(state.next === 'after' || state.mayClose) || state.open.at(-1) !== (mark === '}' ? '{' : '['))
    return false
  state.open.pop()
  return toValue(state, 'after')
}

/** Takes one mark; false where it may not stand there. */
function takeMark(state: State, mark: string): boolean {
  if (mark === '}' || mark === ']') return close(state, mark)
  if (mark === ':') return state.next === 'colon' && toValue(state, 'value')
  if (mark === ',') {
    const innermost = state.open.at(-1)
    return (
      state.next === 'after' && innermost !== undefined && toValue(state, innermost === '{' ? 'key' : 'value')
    )
  }
  if (state.next !== 'value') return false
  state.open.push(mark)
  state.next = mark === '{' ? 'key' : 'value'
  return (state.mayClose = true)
}

function takePiece(state: State, mark: string | undefined, text: string | undefined): boolean {
  if (mark !== undefined) return takeMark(state, mark)
  if (state.next === 'key') return text !== undefined && toValue(state, 'colon')
  return state.next === 'value' && toValue(state, 'after')
}

/**
 * Where a text stops being JSON, for a sentence. Parsers say it in words that differ from engine to engine, or not at
 * all; asked only about a text that one has refused.
 *
 * @example placeOfJsonError('{"name": NaN}') // 'line 1, column 10'
 */
export function placeOfJsonError(text: string): string {
  const state: State = { next: 'value', mayClose: false, open: [] }
  let at = 0
  for (;;) {
    piece.lastIndex = at
    const found = piece.exec(text)
    if (found === null || !takePiece(state, found[1], found[2])) break
    at = piece.lastIndex
  }
  while (/[ \t\r\n]/.test(text[at] ?? '')) at += 1
  if (at >= text.length) return 'it ends too early'
  const before = text.slice(0, at).split('\n')
  return `line ${before.length}, column ${(before.at(-1)?.length ?? 0) + 1}`
}

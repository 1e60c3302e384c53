/**
 * Text in lines of at most `width` characters, broken at spaces; a word that is longer than a line is cut.
 *
 * @param hanging what the second and later lines start with
 * @param first what the first line starts with
 */
export function wrapped(text: string, width: number, hanging = '', first = ''): readonly string[] {
  const lines: string[] = []
  let line = first
  let filled = false
  const push = () => {
    lines.push(line)
    line = hanging
    filled = false
  }
  for (const word of text.split(/\s+/).filter((piece) => piece !== '')) {
    if (filled && line.length + 1 + word.length > width) push()
    let rest = word
    while ((filled ? 1 : 0) + line.length + rest.length > width) {
      const room = Math.max(1, width - line.length - (filled ? 1 : 0))
      line += (filled ? ' ' : '') + rest.slice(0, room)
      rest = rest.slice(room)
      push()
    }
    if (rest === '') continue
    line += (filled ? ' ' : '') + rest
    filled = true
  }
  if (filled || lines.length === 0) lines.push(line)
  return lines
}

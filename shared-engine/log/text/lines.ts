/** Characters after which a line is broken by force: no row of a log is as long. */
const longestLine = 1_000_000

/**
 * Cuts text that comes in pieces into lines; they end at CR LF, LF or CR. What follows the last line end waits for the
 * next piece.
 */
export class LineCutter {
  #rest = ''

  /**
   * The whole lines of the text so far, joined by LF with none at the end; null where no line has ended yet.
   *
   * @param text the next piece
   * @param last nothing follows
   */
  take(text: string, last: boolean): string | null {
    let whole = this.#rest + text
    // a CR at the end may be half of a CR LF
    const open = !last && whole.endsWith('\r')
    if (open) whole = whole.slice(0, -1)
    if (whole.includes('\r')) whole = whole.replace(/\r\n?/g, '\n')
    let end = whole.lastIndexOf('\n')
    if (end === -1 && whole.length > longestLine) {
      whole += '\n'
      end = whole.length - 1
    }
    this.#rest = whole.slice(end + 1) + (open ? '\r' : '')
    return end === -1 ? null : whole.slice(0, end)
  }

  /** What stands behind the last line end; empty where the file ends with one. */
  get rest(): string {
    return this.#rest
  }
}

const blank = /^\s*$/
const comment = /^\s*(#|%|\/\/)/

/** Whether nothing but blanks stands on a line. */
export function isBlank(line: string): boolean {
  return blank.test(line)
}

/** Whether a line is a remark of whoever wrote the file. *Source:* common practice, no source. */
export function isComment(line: string): boolean {
  return comment.test(line)
}

/** A remark without its mark. */
export function commentText(line: string): string {
  return line.replace(/^\s*(#+|%+|\/\/+)/, '').trim()
}

/** Control characters above ASCII, line separators, direction marks, single surrogates: JSON writes them as they are. */
const unwritten = /[\u007f-\u009f]|[\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/gu

/**
 * A result as JSON for programs, safe to look at in a terminal: what could drive one is written as an escape, which any
 * reader of JSON takes for the same character.
 */
export function jsonText(data: unknown): string {
  const escaped = (mark: string) =>
    Array.from({ length: mark.length }, (_, at) => mark.charCodeAt(at).toString(16).padStart(4, '0'))
      .map((code) => `\\u${code}`)
      .join('')
  return `${JSON.stringify(data, null, 2).replace(unwritten, escaped)}\n`
}

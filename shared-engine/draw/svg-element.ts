export type Attributes = Readonly<Record<string, string>>

/** One SVG element as data: written as markup, or held against the one that is on the page. */
export interface SvgElement {
  readonly tag: string
  readonly attributes: Attributes
  /** Of a `text` element; no other has any. */
  readonly text?: string
  readonly inside?: readonly SvgElement[]
}

/** Text as it may stand in an SVG file's element or attribute. */
export function escaped(text: string): string {
  // Most of it is long path data with nothing to escape.
  if (!/[&<>"]/.test(text)) return text
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;')
}

/**
 * Elements as markup.
 *
 * @param between neighbours; empty where the page parses it, so that no text stands between elements
 */
export function svgMarkup(elements: readonly SvgElement[], between: string): string {
  // A clip path is told in one line with what it cuts.
  const joint = elements[0]?.tag === 'clipPath' ? '' : between
  return elements.map((element) => markupOf(element, between)).join(joint)
}

function markupOf({ tag, attributes, text, inside }: SvgElement, between: string): string {
  const named = Object.entries(attributes)
    .map(([name, value]) => ` ${name}="${escaped(value)}"`)
    .join('')
  if (text !== undefined) return `<${tag}${named}>${escaped(text)}</${tag}>`
  return inside === undefined ? `<${tag}${named}/>` : `<${tag}${named}>${svgMarkup(inside, between)}</${tag}>`
}

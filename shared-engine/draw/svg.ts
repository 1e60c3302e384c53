import type { Box, Scene, Shape, Stroke, TextShape } from './scene.ts'
import type { Role } from './role.ts'

/** A colour for each role; the page has its own in its style sheet, this is for paper and files. */
export type Palette = Readonly<Record<Role, string>>

/** Black on white for print; series as Okabe and Ito, darkened where the original would be too pale on paper. */
export const printPalette: Palette = {
  paper: '#ffffff',
  ink: '#15191d',
  quiet: '#566069',
  hairline: '#cdd2d5',
  accent: '#0a5a86',
  near: '#8a5500',
  over: '#b3241a',
  series1: '#0072b2',
  series2: '#d55e00',
  series3: '#008a64',
  series4: '#b65f92',
  series5: '#15191d',
  series6: '#946c00',
}

/** The page's own colours: whatever its style sheet gives each role, in either theme. */
export const pagePalette: Palette = {
  paper: 'var(--paper)',
  ink: 'var(--ink)',
  quiet: 'var(--quiet)',
  hairline: 'var(--hairline)',
  accent: 'var(--accent)',
  near: 'var(--near)',
  over: 'var(--over)',
  series1: 'var(--series-1)',
  series2: 'var(--series-2)',
  series3: 'var(--series-3)',
  series4: 'var(--series-4)',
  series5: 'var(--series-5)',
  series6: 'var(--series-6)',
}

export const svgFont = "'Source Sans 3 Variable', 'Source Sans 3', system-ui, sans-serif"

/** Text as it may stand in an SVG file's element or attribute. */
export function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;')
}

function number(value: number): string {
  const rounded = Math.round(value * 100) / 100
  return String(rounded === 0 ? 0 : rounded)
}

/** Slanting lines across a box, as path data: lines at 45°, each cut where it meets the box. */
export function hatchPath(box: Box, spacing: number): string {
  const { x, y, width, height } = box
  const step = spacing * Math.SQRT2
  const lines: string[] = []
  // Each line runs x + y = c; started from a fixed grid, so that neighbouring boxes continue each other's lines.
  const first = Math.ceil((x + y) / step) * step
  for (let c = first; c < x + y + width + height; c += step) {
    const left = Math.max(x, c - y - height)
    const right = Math.min(x + width, c - y)
    if (right > left) lines.push(`M${number(left)} ${number(c - left)}L${number(right)} ${number(c - right)}`)
  }
  return lines.join('')
}

function strokeText(stroke: Stroke | undefined, palette: Palette): string {
  if (stroke === undefined) return ''
  const dash = stroke.dash && stroke.dash.length > 0 ? ` stroke-dasharray="${stroke.dash.join(' ')}"` : ''
  return ` stroke="${palette[stroke.role]}" stroke-width="${number(stroke.width ?? 1)}"${dash}`
}

function fillText(fill: Role | undefined, opacity: number | undefined, palette: Palette): string {
  const shade = opacity === undefined ? '' : ` fill-opacity="${number(opacity)}"`
  return fill === undefined ? ' fill="none"' : ` fill="${palette[fill]}"${shade}`
}

function textElement(shape: TextShape, palette: Palette): string {
  const anchor = shape.anchor && shape.anchor !== 'start' ? ` text-anchor="${shape.anchor}"` : ''
  const weight = shape.weight === 'strong' ? ' font-weight="600"' : ''
  const { x, y } = shape.at
  const turn = shape.turn ? ` transform="rotate(${number(shape.turn)} ${number(x)} ${number(y)})"` : ''
  const rim = shape.rim ? ` stroke="${palette.paper}" stroke-width="3" paint-order="stroke"` : ''
  const place = `x="${number(x)}" y="${number(y)}" font-size="${shape.size}"`
  return `<text ${place} fill="${palette[shape.role]}"${anchor}${weight}${turn}${rim}>${escaped(shape.text)}</text>`
}

/** `translate(…) rotate(…)` of a group; empty where it stands still. */
export function groupTransform(
  shift: { x: number; y: number } | undefined,
  turn: number | undefined,
): string {
  const parts: string[] = []
  if (shift) parts.push(`translate(${number(shift.x)} ${number(shift.y)})`)
  if (turn) parts.push(`rotate(${number(turn)})`)
  return parts.join(' ')
}

/** Writes shapes; clip paths are numbered as they come. */
class Writer {
  private clips = 0
  private readonly palette: Palette
  private readonly name: string

  constructor(palette: Palette, name: string) {
    this.palette = palette
    this.name = name
  }

  shapes(shapes: readonly Shape[]): string {
    return shapes.map((shape) => this.shape(shape)).join('\n')
  }

  private group(shape: Extract<Shape, { shape: 'group' }>, id: string): string {
    const transform = groupTransform(shape.shift, shape.turn)
    const place = transform === '' ? '' : ` transform="${transform}"`
    const inner = this.shapes(shape.shapes)
    if (shape.clip === undefined) return `<g${id}${place}>${inner}</g>`
    const { x, y, width, height } = shape.clip
    const clip = `${this.name}-clip-${this.clips++}`
    const rect = `<rect x="${number(x)}" y="${number(y)}" width="${number(width)}" height="${number(height)}"/>`
    return `<g${id}${place}><clipPath id="${clip}">${rect}</clipPath><g clip-path="url(#${clip})">${inner}</g></g>`
  }

  private shape(shape: Shape): string {
    const { palette } = this
    const name = shape.id === undefined ? '' : ` id="${escaped(`${this.name}-${shape.id}`)}"`
    const limit = shape.limit === undefined ? '' : ` data-limit="${escaped(shape.limit)}"`
    const id = name + limit
    switch (shape.shape) {
      case 'path':
        return `<path${id} d="${shape.d}"${fillText(shape.fill, shape.fillOpacity, palette)}${strokeText(shape.stroke, palette)}/>`
      case 'polygon': {
        const points = shape.points.map((point) => `${number(point.x)},${number(point.y)}`).join(' ')
        return `<polygon${id} points="${points}"${fillText(shape.fill, shape.fillOpacity, palette)}${strokeText(shape.stroke, palette)}/>`
      }
      case 'line': {
        const { from, to } = shape
        const ends = `x1="${number(from.x)}" y1="${number(from.y)}" x2="${number(to.x)}" y2="${number(to.y)}"`
        return `<line${id} ${ends}${strokeText(shape.stroke, palette)}/>`
      }
      case 'circle': {
        const place = `cx="${number(shape.centre.x)}" cy="${number(shape.centre.y)}" r="${number(shape.radius)}"`
        return `<circle${id} ${place}${fillText(shape.fill, undefined, palette)}${strokeText(shape.stroke, palette)}/>`
      }
      case 'text':
        return textElement(shape, palette)
      case 'hatch': {
        const stroke = strokeText({ role: shape.role, width: 0.8 }, palette)
        return `<path${id} d="${hatchPath(shape.box, shape.spacing)}" fill="none"${stroke}/>`
      }
      case 'group':
        return this.group(shape, id)
    }
  }
}

/**
 * The shapes of a scene as SVG markup, for a page that has its own `svg` element.
 *
 * @param prefix of all ids, unique on the page
 */
export function sceneMarkup(scene: Scene, palette: Palette, prefix: string): string {
  return new Writer(palette, prefix).shapes(scene.shapes)
}

/**
 * A scene as a complete SVG file, with its title and its summary inside. Colours stand in plain attributes: no style
 * sheet is needed, and the same file opens alike everywhere.
 */
export function sceneSvg(scene: Scene, palette: Palette = printPalette): string {
  const { width, height } = scene
  const size = `width="${number(width)}" height="${number(height)}" viewBox="0 0 ${number(width)} ${number(height)}"`
  const ground = `<rect width="${number(width)}" height="${number(height)}" fill="${palette.paper}"/>`
  const words = `<title>${escaped(scene.title)}</title>\n<desc>${escaped(scene.summary)}</desc>`
  const open = `<svg xmlns="http://www.w3.org/2000/svg" ${size} font-family="${escaped(svgFont)}" fill="none">`
  return `${open}\n${words}\n${ground}\n${new Writer(palette, scene.name).shapes(scene.shapes)}\n</svg>\n`
}

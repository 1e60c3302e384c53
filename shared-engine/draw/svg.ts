import type { Box, Scene, Shape, Stroke, TextShape } from './scene.ts'
import type { Role } from './role.ts'
import { escaped, svgMarkup } from './svg-element.ts'
import type { Attributes, SvgElement } from './svg-element.ts'

/** A colour for each role; the page has its own in its style sheet, this is for paper and files. */
type Palette = Readonly<Record<Role, string>>

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

/** A number in an attribute: hundredths of a dot. */
export function number(value: number): string {
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

function strokeOf(stroke: Stroke | undefined, palette: Palette): Attributes {
  if (stroke === undefined) return {}
  const line = { stroke: palette[stroke.role], 'stroke-width': number(stroke.width ?? 1) }
  return stroke.dash && stroke.dash.length > 0 ? { ...line, 'stroke-dasharray': stroke.dash.join(' ') } : line
}

function fillOf(fill: Role | undefined, opacity: number | undefined, palette: Palette): Attributes {
  if (fill === undefined) return { fill: 'none' }
  return opacity === undefined
    ? { fill: palette[fill] }
    : { fill: palette[fill], 'fill-opacity': number(opacity) }
}

function textElement(shape: TextShape, palette: Palette): SvgElement {
  const x = number(shape.at.x)
  const y = number(shape.at.y)
  const attributes: Attributes = {
    x,
    y,
    'font-size': String(shape.size),
    fill: palette[shape.role],
    ...(shape.anchor && shape.anchor !== 'start' && { 'text-anchor': shape.anchor }),
    ...(shape.weight === 'strong' && { 'font-weight': '600' }),
    ...(shape.turn && { transform: `rotate(${number(shape.turn)} ${x} ${y})` }),
    ...(shape.rim && { stroke: palette.paper, 'stroke-width': '3', 'paint-order': 'stroke' }),
  }
  return { tag: 'text', attributes, text: shape.text }
}

/** `translate(…) rotate(…)` of a group; empty where it stands still. */
function groupTransform(shift: { x: number; y: number } | undefined, turn: number | undefined): string {
  const parts: string[] = []
  if (shift) parts.push(`translate(${number(shift.x)} ${number(shift.y)})`)
  if (turn) parts.push(`rotate(${number(turn)})`)
  return parts.join(' ')
}

/** Shapes as elements; clip paths are numbered as they come. */
class Writer {
  private clips = 0
  private readonly palette: Palette
  private readonly name: string

  constructor(palette: Palette, name: string) {
    this.palette = palette
    this.name = name
  }

  shapes(shapes: readonly Shape[]): SvgElement[] {
    return shapes.map((shape) => this.shape(shape))
  }

  private group(shape: Extract<Shape, { shape: 'group' }>, common: Attributes): SvgElement {
    const transform = groupTransform(shape.shift, shape.turn)
    const attributes = transform === '' ? common : { ...common, transform }
    const inside = this.shapes(shape.shapes)
    if (shape.clip === undefined) return { tag: 'g', attributes, inside }
    const { x, y, width, height } = shape.clip
    const id = `${this.name}-clip-${this.clips++}`
    const box = { x: number(x), y: number(y), width: number(width), height: number(height) }
    const clip: SvgElement = {
      tag: 'clipPath',
      attributes: { id },
      inside: [{ tag: 'rect', attributes: box }],
    }
    const clipped: SvgElement = { tag: 'g', attributes: { 'clip-path': `url(#${id})` }, inside }
    return { tag: 'g', attributes, inside: [clip, clipped] }
  }

  private shape(shape: Shape): SvgElement {
    const { palette } = this
    const common: Attributes = {
      ...(shape.id !== undefined && { id: `${this.name}-${shape.id}` }),
      ...(shape.limit !== undefined && { 'data-limit': shape.limit }),
    }
    switch (shape.shape) {
      case 'path': {
        const look = { ...fillOf(shape.fill, shape.fillOpacity, palette), ...strokeOf(shape.stroke, palette) }
        return { tag: 'path', attributes: { ...common, d: shape.d, ...look } }
      }
      case 'polygon': {
        const points = shape.points.map((point) => `${number(point.x)},${number(point.y)}`).join(' ')
        const look = { ...fillOf(shape.fill, shape.fillOpacity, palette), ...strokeOf(shape.stroke, palette) }
        return { tag: 'polygon', attributes: { ...common, points, ...look } }
      }
      case 'line': {
        const { from, to } = shape
        const ends = { x1: number(from.x), y1: number(from.y), x2: number(to.x), y2: number(to.y) }
        return { tag: 'line', attributes: { ...common, ...ends, ...strokeOf(shape.stroke, palette) } }
      }
      case 'circle': {
        const place = { cx: number(shape.centre.x), cy: number(shape.centre.y), r: number(shape.radius) }
        const look = { ...fillOf(shape.fill, undefined, palette), ...strokeOf(shape.stroke, palette) }
        return { tag: 'circle', attributes: { ...common, ...place, ...look } }
      }
      case 'text':
        return textElement(shape, palette)
      case 'hatch': {
        const look = strokeOf({ role: shape.role, width: 0.8 }, palette)
        const d = hatchPath(shape.box, shape.spacing)
        return { tag: 'path', attributes: { ...common, d, fill: 'none', ...look } }
      }
      case 'group':
        return this.group(shape, common)
    }
  }
}

/**
 * The shapes of a scene as SVG elements, for a page that has its own `svg` element.
 *
 * @param prefix of all ids, unique on the page
 */
export function sceneElements(scene: Scene, palette: Palette, prefix: string): SvgElement[] {
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
  return `${open}\n${words}\n${ground}\n${svgMarkup(sceneElements(scene, palette, scene.name), '\n')}\n</svg>\n`
}

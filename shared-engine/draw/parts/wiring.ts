import type { Machine } from '../../machine/parts.ts'
import type { StepDownPart, WirePart } from '../../machine/wires.ts'
import { formatText } from '../../units/display.ts'
import type { UnitSystem } from '../../units/kinds.ts'
import type { Box, Shape } from '../scene.ts'
import { textWidth } from '../text-width.ts'
import { px } from './outline.ts'
import type { DrawnPart } from './part.ts'

/** What of the wiring is drawn. */
export type DrawnWire = Pick<WirePart, 'circuit' | 'area' | 'parallel'>
export type DrawnWiring = {
  readonly wires: readonly DrawnWire[]
  readonly stepDowns: readonly Pick<StepDownPart, 'volts'>[]
  readonly fuseAmps: Machine['pack']['fuseAmps']
}

/** px of words in the drawing's small size. */
const small = 11
const padding = 8
/** Step-downs drawn one by one; more are counted. */
const mostBoxes = 3
/** Low enough to leave the middle of the cell, where it is pressed, to the wires. */
const box = { width: 30, height: 17, top: 29 } as const

/** "16 mm²", "2 × 16 mm²": what a wire of a circuit is, of several the thinnest. */
export function wireText(
  wires: readonly DrawnWire[],
  circuit: DrawnWire['circuit'],
  system: UnitSystem,
): string | null {
  const [first] = wires
    .filter((wire) => wire.circuit === circuit)
    .toSorted((one, other) => one.area * one.parallel - other.area * other.parallel)
  if (first === undefined) return null
  const area = plain(formatText(first.area, 'wireSection', system))
  return first.parallel > 1 ? `${first.parallel} × ${area}` : area
}

/** Whether anything of the wiring was entered. */
export function hasWiring({ wires, stepDowns, fuseAmps }: DrawnWiring): boolean {
  return wires.length > 0 || stepDowns.length > 0 || fuseAmps !== null
}

/** px of a lead by its copper: a thick wire looks thick. */
function leadWidth(wires: readonly DrawnWire[], circuit: DrawnWire['circuit']): number {
  const areas = wires.filter((wire) => wire.circuit === circuit).map(({ area, parallel }) => area * parallel)
  return areas.length === 0 ? 1 : Math.min(3.2, 0.8 + 0.12 * Math.sqrt(Math.min(...areas) * 1e6) * 2)
}

/** Leads of the pack with fuse and section, and the supplies that hang from them; signs, not to scale. */
export function drawWiring(
  wiring: DrawnWiring,
  system: UnitSystem,
): DrawnPart & { readonly supplies: Box | null } {
  const { wires, stepDowns, fuseAmps } = wiring
  const fuse = fuseAmps === null ? null : plain(formatText(fuseAmps, 'amps', system))
  const section = wireText(wires, 'pack', system)
  const fuseWidth = fuse === null ? 0 : Math.max(26, textWidth(fuse, small)) + padding
  const sectionWidth = section === null ? 0 : textWidth(section, small) + padding
  const boxes = Math.min(mostBoxes, stepDowns.length)
  const width = Math.max(70, padding + fuseWidth + sectionWidth, padding + boxes * (box.width + 4))
  const lead = { role: 'ink', width: leadWidth(wires, 'pack') } as const
  const fuseAt = padding + fuseWidth / 2
  const text = (words: string, x: number): Shape => ({
    shape: 'text',
    at: { x, y: -12 },
    text: words,
    size: small,
    role: 'quiet',
    anchor: 'middle',
  })
  const shapes: Shape[] = [
    { shape: 'line', from: { x: 0, y: -3.5 }, to: { x: width, y: -3.5 }, stroke: lead },
    { shape: 'line', from: { x: 0, y: 3.5 }, to: { x: width, y: 3.5 }, stroke: lead },
    ...(fuse === null ? [] : [fuseSign(fuseAt), text(fuse, fuseAt)]),
    ...(section === null ? [] : [text(section, padding + fuseWidth + sectionWidth / 2)]),
    ...supplyShapes(stepDowns, width, system),
  ]
  const supplies = boxes === 0 ? null : { x: 0, y: box.top - 2, width, height: 24 }
  return {
    shapes,
    wheels: [],
    loops: [],
    width,
    middle: width / 2,
    entry: 0,
    exit: width,
    description: descriptionOf(wiring, fuse, section, wireText(wires, 'motor', system)),
    scale: null,
    supplies,
  }
}

/** *Source:* IEC 60617, fuse: a box with the lead through it (from memory). */
function fuseSign(x: number): Shape {
  return {
    shape: 'path',
    d: `M${px(x - 9)} -7.5h18v8h-18Z`,
    stroke: { role: 'ink', width: 1 },
  }
}

/** A box for each supply with the volts that it makes, hanging from both leads. */
function supplyShapes(stepDowns: DrawnWiring['stepDowns'], width: number, system: UnitSystem): Shape[] {
  const shown = stepDowns.slice(0, mostBoxes)
  const step = box.width + 4
  const left = (width - shown.length * step + 4) / 2
  return shown.flatMap(({ volts }, index): Shape[] => {
    const x = left + index * step
    const more = stepDowns.length - mostBoxes
    const words =
      index === mostBoxes - 1 && more > 0 ? `+${more + 1}` : plain(formatText(volts, 'volts', system, 'V'))
    const middle = x + box.width / 2
    return [
      {
        shape: 'path',
        d: `M${px(middle - 4)} -3.5V${box.top}M${px(middle + 4)} 3.5V${box.top}`,
        stroke: { role: 'quiet', width: 0.8 },
      },
      {
        shape: 'path',
        d: `M${px(x)} ${box.top}h${box.width}v${box.height}h-${box.width}Z`,
        fill: 'paper',
        stroke: { role: 'ink', width: 0.9 },
      },
      {
        shape: 'text',
        at: { x: middle, y: box.top + 12.5 },
        text: words,
        size: small,
        role: 'ink',
        anchor: 'middle',
      },
    ]
  })
}

/** "12.00 V" as "12 V": a small sign has no room for zeros. */
function plain(words: string): string {
  return words.replace(/\.0+(?=\D|$)/, '')
}

function descriptionOf(
  { stepDowns }: DrawnWiring,
  fuse: string | null,
  pack: string | null,
  motor: string | null,
): string {
  const parts = [
    pack === null ? 'leads of the pack' : `leads of the pack of ${pack}`,
    ...(fuse === null ? [] : [`fuse of ${fuse}`]),
    ...(motor === null ? [] : [`leads of a motor of ${motor}`]),
    ...(stepDowns.length === 0 ? [] : [`${stepDowns.length} suppl${stepDowns.length === 1 ? 'y' : 'ies'}`]),
  ]
  return parts.join(', ')
}

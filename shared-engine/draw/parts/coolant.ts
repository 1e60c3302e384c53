import type { CoolingPart } from '../../machine/parts.ts'
import type { Shape } from '../scene.ts'
import { circlePath, px } from './outline.ts'
import type { DrawnPart } from './part.ts'

const width = 100
/** Of the pipes above and below the axis, px: within what a motor's rim reaches. */
export const pipeAt = 29
const pipe = { role: 'quiet', width: 2.2 } as const

/** A small arrowhead on a pipe along y, pointing right or left. */
function flowArrow(x: number, y: number, way: 1 | -1): Shape {
  return {
    shape: 'path',
    d: `M${px(x - 4 * way)} ${px(y - 3.5)}L${px(x + 3 * way)} ${px(y)}L${px(x - 4 * way)} ${px(y + 3.5)}Z`,
    fill: 'quiet',
  }
}

/**
 * The coolant's circuit between controller and motor, whose leads pass through its middle: radiator, tank and pump below,
 * the way back above. Signs, not to scale.
 *
 * @param motorWire what the leads are, in words
 */
export function drawCoolant(cooling: Pick<CoolingPart, 'capPressure'>, motorWire: string | null): DrawnPart {
  const lead = (y: number): Shape => ({
    shape: 'line',
    from: { x: 0, y },
    to: { x: width, y },
    stroke: { role: 'ink', width: 1 },
  })
  const shapes: Shape[] = [
    ...[-7, 0, 7].map(lead),
    { shape: 'line', from: { x: 0, y: pipeAt }, to: { x: width, y: pipeAt }, stroke: pipe },
    { shape: 'line', from: { x: 0, y: -pipeAt }, to: { x: width, y: -pipeAt }, stroke: pipe },
    flowArrow(width / 2, -pipeAt, -1),
    ...(motorWire === null ? [] : [wireWords(motorWire)]),
    ...radiator(8),
    ...tank(48, cooling.capPressure > 0),
    ...pump(82),
  ]
  return {
    shapes,
    wheels: [],
    loops: [],
    width,
    middle: width / 2,
    entry: 0,
    exit: width,
    description: 'circuit of coolant: pump, motor, controller, radiator, tank',
    scale: null,
  }
}

/** A box with the tube that winds through it. */
function radiator(x: number): Shape[] {
  const top = pipeAt - 10
  const fins = [0, 1, 2, 3, 4, 5].map((fin) => `M${px(x + 4 + fin * 4)} ${top}v20`).join('')
  return [
    { shape: 'path', d: `M${x} ${top}h28v20h-28Z`, fill: 'paper', stroke: { role: 'ink', width: 1 } },
    { shape: 'path', d: fins, stroke: { role: 'quiet', width: 0.8 } },
    {
      shape: 'path',
      d: `M${x} ${pipeAt}l4 -5l4 10l4 -10l4 10l4 -10l4 10l4 -5`,
      stroke: { role: 'ink', width: 1 },
    },
  ]
}

/** A vessel with its level; a cap where it holds pressure. */
function tank(x: number, capped: boolean): Shape[] {
  const top = pipeAt - 10
  const cap: Shape[] = capped ? [{ shape: 'path', d: `M${x + 3} ${top - 3}h10v3h-10Z`, fill: 'ink' }] : []
  return [
    { shape: 'path', d: `M${x} ${top}h16v20h-16Z`, fill: 'paper', stroke: { role: 'ink', width: 1 } },
    { shape: 'path', d: `M${x} ${top + 6}q4 -3 8 0t8 0`, stroke: { role: 'quiet', width: 1 } },
    ...cap,
  ]
}

/** *Source:* ISO 1219-1, a pump: a circle with a triangle that points the way it pushes (from memory). */
function pump(x: number): Shape[] {
  const d = `M${px(x + 8)} ${pipeAt}L${px(x - 3)} ${px(pipeAt - 6)}V${px(pipeAt + 6)}Z`
  return [
    {
      shape: 'path',
      id: 'pump',
      d: circlePath(8, { x, y: pipeAt }),
      fill: 'paper',
      stroke: { role: 'ink', width: 1 },
    },
    { shape: 'path', d, fill: 'ink' },
  ]
}

function wireWords(text: string): Shape {
  return { shape: 'text', at: { x: width / 2, y: -13 }, text, size: 11, role: 'quiet', anchor: 'middle' }
}

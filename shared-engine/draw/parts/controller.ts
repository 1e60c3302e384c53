import type { Shape } from '../scene.ts'
import type { DrawnPart } from './part.ts'

const width = 56
const half = 24

/**
 * A controller: a finned case with two leads in and three out; a symbol, not to scale.
 *
 * @param motorWire what its leads to a motor are, in words
 */
export function drawController(count: number, motorWire: string | null = null): DrawnPart {
  const behind: Shape[] =
    count > 1
      ? [
          {
            shape: 'path',
            d: `M5 ${-half}V${-half - 5}H${width + 5}V${half - 5}H${width}`,
            stroke: { role: 'ink', width: 0.9 },
          },
        ]
      : []
  const fins = Array.from(
    { length: 9 },
    (_, index) => `M${10 + index * 4.5} ${-half + 5}V${-half + 17}`,
  ).join('')
  // Half-bridges: three switches' worth of steps, the wave that they make.
  const wave = `M10 10H14V2H18V14H22V4H28V12H32V0H36V10H40V6H46`
  const shapes: Shape[] = [
    ...behind,
    {
      shape: 'path',
      d: `M0 ${-half}H${width}V${half}H0Z`,
      fill: 'paper',
      stroke: { role: 'ink', width: 1.1 },
    },
    { shape: 'path', d: fins, stroke: { role: 'quiet', width: 0.9 } },
    { shape: 'path', d: wave, stroke: { role: 'ink', width: 0.9 } },
    ...motorWireShapes(motorWire),
  ]
  return {
    shapes,
    wheels: [],
    loops: [],
    width,
    middle: width / 2,
    entry: 0,
    exit: width,
    description: count > 1 ? `${count} controllers, one for each motor` : 'controller',
    scale: null,
  }
}

/** The section of the leads to the motor under the case, beside a sign of three of them. */
function motorWireShapes(words: string | null): Shape[] {
  if (words === null) return []
  const y = half + 11
  const leads = [-2.5, 0, 2.5].map((lift) => `M${-4} ${y - 4 + lift}h9`).join('')
  return [
    { shape: 'path', d: leads, stroke: { role: 'quiet', width: 0.8 } },
    { shape: 'text', at: { x: 8, y }, text: words, size: 11, role: 'quiet', anchor: 'start' },
  ]
}

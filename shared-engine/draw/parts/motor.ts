import type { Shape } from '../scene.ts'
import { borePath, jointText } from './joint.ts'
import { degrees, pathOf, polar } from './outline.ts'
import type { DrawnPart, Turning } from './part.ts'
import { fullTurn } from '../../constants.ts'

const radius = 33

/** Magnets as they stand round the rotor: every second one filled, so that poles can be counted. */
function magnets(poles: number): Shape[] {
  const outer = radius - 4
  const inner = radius - 9
  const span = fullTurn / poles
  const magnet = (index: number): string => {
    const from = (index - 0.42) * span
    const to = (index + 0.42) * span
    const steps = Math.max(1, Math.ceil((to - from) / 0.2))
    const along = Array.from({ length: steps + 1 }, (_, step) => from + ((to - from) * step) / steps)
    const points = [
      ...along.map((angle) => polar(angle, outer)),
      ...along.reverse().map((angle) => polar(angle, inner)),
    ]
    return pathOf(points)
  }
  const every = (first: number): string =>
    Array.from({ length: poles / 2 }, (_, index) => magnet(2 * index + first)).join('')
  return [
    { shape: 'path', d: every(0), fill: 'ink' },
    { shape: 'path', d: every(1), fill: 'paper', stroke: { role: 'ink', width: 0.7 } },
  ]
}

/** A motor seen along its shaft, with its true number of poles on a rotor that turns; a symbol, not to scale. */
export function drawMotor(count: number, poles: number, turning: Turning): DrawnPart {
  const offset = count > 1 ? 5 : 0
  const middle = radius + 1
  const behind: Shape[] =
    count > 1
      ? [
          {
            shape: 'circle',
            centre: { x: middle + offset, y: -offset },
            radius,
            fill: 'paper',
            stroke: { role: 'ink', width: 0.9 },
          },
        ]
      : []
  const rotor: Shape[] = [
    ...magnets(poles),
    {
      shape: 'path',
      d: borePath(5.5, turning.joint ?? null),
      fill: 'paper',
      stroke: { role: 'ink', width: 0.9 },
    },
    { shape: 'circle', centre: { x: 0, y: 0 }, radius: radius - 12, stroke: { role: 'quiet', width: 0.6 } },
  ]
  const shapes: Shape[] = [
    ...behind,
    {
      shape: 'circle',
      centre: { x: middle, y: 0 },
      radius,
      fill: 'paper',
      stroke: { role: 'ink', width: 1.1 },
    },
    { shape: 'group', id: `${turning.id}.rotor`, shift: { x: middle, y: 0 }, turn: 0, shapes: rotor },
  ]
  return {
    shapes,
    wheels: [
      {
        id: `${turning.id}.rotor`,
        shift: { x: middle, y: 0 },
        phase: degrees(0),
        turnsPerMotorTurn: turning.turns,
      },
    ],
    loops: [],
    width: 2 * radius + 2 + offset,
    middle,
    entry: 1,
    exit: middle,
    description: `${count > 1 ? `${count} motors` : 'motor'} of ${poles} poles${jointText('its wheel', turning.joint ?? null)}`,
    scale: null,
  }
}

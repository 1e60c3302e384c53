import { expect, it } from 'vitest'
import { partFigures } from '../../../shared-engine/draw/part-figures.ts'
import { powerPath } from '../../../shared-engine/draw/power-path.ts'
import type { Box, Point, Shape } from '../../../shared-engine/draw/scene.ts'
import { textWidth } from '../../../shared-engine/draw/text-width.ts'
import { oneText } from '../../../shared-engine/units/display.ts'
import { drawnMachines, type DrawnMachine } from '../../drawings/machines.ts'

interface Words {
  readonly words: string
  readonly box: Box
}

function boxOf(words: string, at: Point, size: number, anchor: 'start' | 'middle' | 'end' = 'start'): Words {
  const width = textWidth(words, size)
  const x = anchor === 'start' ? at.x : anchor === 'end' ? at.x - width : at.x - width / 2
  return { words, box: { x, y: at.y - 0.75 * size, width, height: 0.95 * size } }
}

/** Every text of a drawing where it stands; groups of words are not turned. */
function wordsIn(shapes: readonly Shape[], shift: Point = { x: 0, y: 0 }): Words[] {
  return shapes.flatMap((shape): Words[] => {
    if (shape.shape === 'text') {
      const { text, at, size, anchor } = shape
      return [boxOf(text, { x: at.x + shift.x, y: at.y + shift.y }, size, anchor)]
    }
    if (shape.shape !== 'group') return []
    const { x, y } = shape.shift ?? { x: 0, y: 0 }
    return wordsIn(shape.shapes, { x: x + shift.x, y: y + shift.y })
  })
}

const apart = ({ box: a }: Words, { box: b }: Words) =>
  Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x) <= 0.5 ||
  Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y) <= 0.5

const state = {
  duty: 1,
  motorSpeed: 3400,
  motorAmps: 128,
  motorTorque: 12.5,
  packAmps: 126,
  packVolts: 44.4,
  beltSpeed: 15.5,
  groundSpeed: 15.1,
  motorThrust: 1340,
  thrust: 1280,
  slip: 0.06,
}

const names = Object.keys(drawnMachines) as DrawnMachine[]

it.each(names.flatMap((name) => [true, false].map((low) => [name, low] as const)))(
  'no words of the drawing of %s lie over others, low: %s',
  (name, low) => {
    const { machine, parallel } = drawnMachines[name]
    for (const width of [960, 1024, 1280, 1920]) {
      const scene = powerPath(machine, { width, system: 'metric', cellsInParallel: parallel, low })
      const figures = partFigures(machine, state, 'metric')
      const all = [
        ...wordsIn(scene.shapes),
        ...scene.parts.flatMap((part) =>
          (figures[part.part] ?? []).map((figure, line) =>
            boxOf(oneText(figure), { x: part.figures.x, y: part.figures.y + 15 * line }, 13, 'middle'),
          ),
        ),
      ]
      const over = all.flatMap((one, at) =>
        all.slice(at + 1).flatMap((other) => (apart(one, other) ? [] : [`${one.words} | ${other.words}`])),
      )
      expect(over, `${width}`).toEqual([])
    }
  },
)

it('draws what is entered, and leaves to words at the end what is not', () => {
  const drawn = (name: DrawnMachine) =>
    powerPath(drawnMachines[name].machine, { width: 1280, system: 'metric' })
  expect(drawn('fitted').parts.map(({ part }) => part)).toEqual(
    expect.arrayContaining(['wires', 'stepDowns', 'cooling']),
  )
  expect(drawn('fitted').undrawn.map(({ part }) => part)).toEqual(['accessories', 'service'])
  expect(drawn('quick').undrawn.map(({ part }) => part)).toEqual([
    'accessories',
    'stepDowns',
    'wires',
    'cooling',
    'service',
  ])
  expect(drawn('fitted').summary).toMatch(
    /16\D+mm².*fuse of 150\D+A.*2 supplies.*radiator.*idler pushed by a spring/,
  )
})

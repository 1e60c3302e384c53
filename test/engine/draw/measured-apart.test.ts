import { expect, it } from 'vitest'
import { fitChannels } from '../../../shared-engine/draw/plots/fit-channels.ts'
import { validationPlot } from '../../../shared-engine/draw/plots/validation.ts'
import type { Scene, Shape } from '../../../shared-engine/draw/scene.ts'

// WCAG 2.2, 1.4.1: colour is not the only means of telling things apart.

const look = { size: { width: 600, height: 400 }, system: 'metric' } as const
const seconds = [0, 1, 2, 3]
const column = (of: number) => Float64Array.of(of, of + 2, of - 1, of + 1)
const run = { segments: [0, 0, 0, 0], seconds, measured: column(40) }

/** Each line, cloud of dots and face of a plot's data as it looks in one colour. */
function looksOf({ shapes }: Scene): readonly string[] {
  const within = (shape: Shape): readonly Shape[] =>
    shape.shape === 'group' ? shape.shapes.flatMap(within) : [shape]
  return shapes
    .flatMap((shape) => (shape.shape === 'group' && shape.clip !== undefined ? within(shape) : []))
    .flatMap((shape) => (shape.shape === 'path' ? [shape] : []))
    .map(({ fill, stroke }) => (fill === undefined ? `line ${stroke?.dash?.join(' ') ?? 'solid'}` : 'filled'))
}

it('measured, predicted before a fit and after it are told apart without their colours', () => {
  const channel = { ...run, id: 'amps', before: column(30), after: column(39) } as const
  expect(looksOf(fitChannels([channel], 0, look))).toEqual(['filled', 'line 5 3', 'line solid'])
})

it('measured and predicted are told apart without their colours, and the band from both', () => {
  const own = { sigma: column(1), speeds: null, shared: 0, responses: [], tried: [] }
  const series = { ...run, ...own, id: 'amps', predicted: column(38), band: column(3) } as const
  expect(looksOf(validationPlot([series], 0, look))).toEqual(['filled', 'line 5 3', 'line solid'])
})

import fc from 'fast-check'
import { expect, it } from 'vitest'
import { machineOf } from '../../../shared-engine/machine/machine.ts'
import { completeBuild } from '../../../shared-engine/entries/read.ts'
import { drawStage, stageScales } from '../../../shared-engine/draw/parts/stage.ts'
import type { Shape } from '../../../shared-engine/draw/scene.ts'
import { newBuild } from '../../../shared-engine/assume/start.ts'

const room = { half: 40, width: 200 }

/** Every shape with the groups that it is in taken apart. */
const inside = (shapes: readonly Shape[]): Shape[] =>
  shapes.flatMap((shape) => (shape.shape === 'group' ? [shape, ...inside(shape.shapes)] : [shape]))

it('draws both wheels of any pair of gears whole: nothing is cut, and the larger one fits its room', () => {
  const teeth = fc.integer({ min: 4, max: 1000 })
  fc.assert(
    fc.property(teeth, teeth, (driverTeeth, drivenTeeth) => {
      const gear = {
        kind: 'gear',
        driverTeeth,
        drivenTeeth,
        moduleMm: 1,
        faceWidthMm: 10,
        driverMaterial: 'steel-c45',
        drivenMaterial: 'steel-c45',
      } as const
      const { stages } = machineOf(completeBuild({ ...newBuild(), stages: [gear], origins: {} }))
      const [scale] = stageScales(stages, room)
      const drawn = drawStage(stages[0] as (typeof stages)[number], room, scale ?? 1, {
        id: 'stage.1',
        turns: 1,
      })
      expect(
        inside(drawn.shapes).filter((shape) => shape.shape === 'group' && shape.clip !== undefined),
      ).toEqual([])
      // Outside diameters of gears of module m: (z + 2) m (ISO 21771).
      const tip = ((Math.max(driverTeeth, drivenTeeth) + 2) / 2) * 0.001 * (scale ?? 1)
      expect(tip).toBeLessThanOrEqual(room.half + 1e-9)
      expect(drawn.width).toBeLessThanOrEqual(room.width + 1e-6)
      expect(drawn.exit).toBeLessThan(drawn.width)
    }),
    { numRuns: 60 },
  )
})

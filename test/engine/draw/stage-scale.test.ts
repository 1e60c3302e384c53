import fc from 'fast-check'
import { expect, it } from 'vitest'
import { gearRadii } from '../../../shared-engine/draw/parts/involute.ts'
import { stageScales } from '../../../shared-engine/draw/parts/stage.ts'
import { powerPath } from '../../../shared-engine/draw/power-path.ts'
import type { StagePart } from '../../../shared-engine/machine/parts.ts'
import { drawnMachines } from '../../drawings/machines.ts'

const { machine } = drawnMachines.quick
const gear = machine.stages[0]
if (gear?.kind !== 'gear') throw new Error('the machine of this test begins with gears')

const pair = fc
  .record({
    driverTeeth: fc.integer({ min: 4, max: 40 }),
    share: fc.double({ min: 1, max: 250, noNaN: true }),
    module: fc.double({ min: 0.0003, max: 0.005, noNaN: true }),
  })
  .map(({ driverTeeth, share, module }): Extract<StagePart, { kind: 'gear' }> => {
    const drivenTeeth = Math.round(driverTeeth * share)
    return { ...gear, driverTeeth, drivenTeeth, module, ratio: drivenTeeth / driverTeeth }
  })

/** m, of both wheels' tip circles; by ISO 53 the tip stands a module above the pitch circle. */
const tipsOf = ({ driverTeeth, drivenTeeth, module }: Extract<StagePart, { kind: 'gear' }>) =>
  [driverTeeth, drivenTeeth].map((teeth) => (module * teeth) / 2 + module)

it('no wheel is cut, and of two the larger in truth is never the smaller on the page', () => {
  const room = { width: 250, half: 60 }
  fc.assert(
    fc.property(pair, pair, (first, second) => {
      const scales = stageScales([first, second], room)
      const [one, other] = [first, second].map((stage, index) => {
        const scale = scales[index] ?? NaN
        const [driver = NaN, driven = NaN] = tipsOf(stage)
        // Whole within its room: up and down, and both wheels side by side.
        expect(Math.max(driver, driven) * scale).toBeLessThanOrEqual(room.half * 1.000001)
        const centres = gearRadii({ ...stage, teeth: stage.driverTeeth + stage.drivenTeeth }).pitch
        expect((driver + centres + driven) * scale).toBeLessThanOrEqual(room.width * 1.000001)
        return { truth: Math.max(driver, driven), drawn: Math.max(driver, driven) * scale }
      })
      if (one === undefined || other === undefined || one.truth === other.truth) return
      expect(Math.sign(one.drawn - other.drawn)).toBe(Math.sign(one.truth - other.truth))
    }),
  )
})

it('where the scale changes from one part to the next a break says so, also to readers', () => {
  const look = { width: 1280, system: 'metric' } as const
  const broken = /Not all to one scale/
  expect(powerPath(machine, look).summary).toMatch(broken)
  const direct = drawnMachines.direct.machine
  const alone = { ...direct, stages: [] }
  expect(powerPath(alone, look).summary).not.toMatch(broken)
})

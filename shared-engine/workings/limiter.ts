import type { Draft } from './draft.ts'
import type { LimitWorking } from './limit.ts'
import { loopScale, trainPull } from './pulls.ts'
import { productOf, stageEfficiency, stageRatio } from './train.ts'
import { topTorque } from './motion.ts'

/** `T_s`: torque of a driven shaft without the service factor, no limiter slipping. */
function plainTorque(d: Draft, number: number, name: 'grip' | 'top'): void {
  const numbers = Array.from({ length: number }, (_, at) => at + 1)
  const ratios = numbers.map((one) => stageRatio(d, one))
  const told = ['torque', 'torque at the limiter, without the service factor'] as const
  if (name === 'top') {
    topTorque(d)
    const efficiencies = numbers.map((one) => stageEfficiency(d, one))
    d.step('T_s', told, productOf(['T', ...ratios, ...efficiencies]))
    return
  }
  const pull = trainPull(d, 'grip', number, false)
  loopScale(d)
  d.step('T_s', told, `${productOf([pull, 'r', 'N_t', ...ratios])} / (M * G)`)
}

/** A limiter that slips in ordinary use gets hot and wears. */
export const limiterWorking = (number: number): LimitWorking => ({
  title: `The torque that ordinary use asks of the limiter of stage ${number} against that at which it slips.`,
  source: 'statics of the train',
  missing: ({ machine }) =>
    (machine.stages[number - 1]?.slipTorque ?? null) === null
      ? { why: `it needs what is not entered: stages.${number - 1}.slipTorqueNm.` }
      : null,
  write: (d, row) => {
    plainTorque(d, number, row.case === 'top' ? 'top' : 'grip')
    d.entry('T_L', `stages.${number - 1}.slipTorqueNm`)
    return { actual: 'T_s', allowed: 'T_L' }
  },
})

import { isAssumed } from '../assume/assumed.ts'
import type { Checked } from '../check.ts'

/** What keeps the machine from going faster, in words that end the answer. */
export function holdsBack({ figures, machine }: Checked): string {
  const { topBeltSpeedMps, topMotorAmps, topSlip } = figures
  if (topBeltSpeedMps === null || topMotorAmps === null) return ''
  const { controller, ground } = machine
  const spins = ground.model === 'coefficient' && topSlip !== null && topSlip > ground.slip + 1e-9
  if (spins) return 'limited by grip'
  if (topMotorAmps >= controller.currentLimit * (1 - 1e-9)) return 'limited by the current limit'
  if (controller.throttleCap < 1) return 'limited by the throttle'
  return 'limited by the pack’s voltage'
}

/** "12 % below the rated limit": the loaded speed against what the maker allows. */
export function againstRated({ figures, machine, build }: Checked): string {
  const { topMotorRpm } = figures
  if (topMotorRpm === null) return ''
  const share = (1 - topMotorRpm / machine.motor.ratedMaxRpm) * 100
  const size = Math.abs(share)
  return `${size.toFixed(size < 10 ? 1 : 0)}\u202F% ${share < 0 ? 'past' : 'below'} the ${isAssumed(build, 'motor.ratedMaxRpm') ? 'assumed' : 'rated'} limit`
}

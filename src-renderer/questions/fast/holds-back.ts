import type { Checked } from '../../../shared-engine/index.ts'

/** What keeps the machine from going faster, in words that end the sentence "… is what holds it". */
export function holdsBack({ figures, machine }: Checked): string {
  const { topBeltSpeedMps, topMotorAmps, topSlip } = figures
  if (topBeltSpeedMps === null || topMotorAmps === null) return ''
  const { controller, ground } = machine
  const spins = ground.model === 'coefficient' && topSlip !== null && topSlip > ground.slip + 1e-9
  if (spins) return 'grip is what holds it'
  if (topMotorAmps >= controller.currentLimit * (1 - 1e-9)) return 'the current limit is what holds it'
  if (controller.throttleCap < 1) return 'the throttle cap is what holds it'
  return 'the pack’s voltage is what holds it'
}

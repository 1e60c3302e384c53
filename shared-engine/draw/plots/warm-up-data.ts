import type { WarmUp as WarmUpOfMotor } from '../../cases/warm-up.ts'
import type { Machine } from '../../machine/parts.ts'
import type { WarmUp, WarmUpCurve } from './warm-up.ts'

/** The curves of the warm-up plot: as built, the same while the coolant stands, and the controller. */
export function warmUpData(
  machine: Machine,
  amps: number | null,
  curveOf: (cooled: boolean) => WarmUpOfMotor | null,
): WarmUp {
  const built = curveOf(machine.cooling !== null)
  const curves: WarmUpCurve[] = []
  if (built !== null) {
    curves.push({
      label: 'Motor',
      seconds: built.seconds,
      temperatures: built.motor,
      secondsToLimit: built.secondsToLimit,
    })
  }
  const bare = machine.cooling === null ? null : curveOf(false)
  if (bare !== null) {
    const label = 'Motor while the coolant stands'
    curves.push({
      label,
      seconds: bare.seconds,
      temperatures: bare.motor,
      secondsToLimit: bare.secondsToLimit,
    })
  }
  if (built !== null && built.controller !== null) {
    curves.push({
      label: 'Controller',
      seconds: built.seconds,
      temperatures: built.controller,
      secondsToLimit: null,
    })
  }
  const limits: WarmUp['limits'] = [
    { id: 'motor.temperature', label: 'Motor’s limit', value: machine.motor.maxTemperature },
  ]
  return { curves, limits: curves.length === 0 ? [] : limits, motorAmps: amps ?? 0 }
}

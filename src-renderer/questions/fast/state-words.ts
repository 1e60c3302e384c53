import { isAssumed } from '../../../shared-engine/assume/assumed.ts'
import type { Checked } from '../../../shared-engine/index.ts'
import { presetOf } from '../../fields/ground-edits.ts'
import { percentWords } from '../../parts/percent-words.ts'

/** One thing that a top speed holds for. */
interface StateWords {
  readonly words: string
  /** Whether it rests on a number that nobody has entered. */
  readonly assumed: boolean
  /** The entry that would change it. */
  readonly path: string
}

/**
 * What the answer holds for: warm or cold motor, charge, throttle, air, ground, each with the entry behind it.
 *
 * @param degrees writes a temperature in °C in the window's units
 */
export function stateWords(checked: Checked, degrees: (celsius: number) => string): readonly StateWords[] {
  const { build, machine } = checked
  const { controller, service, ground, vehicle } = build
  const winding = service.windingTemperatureC
  const warmth = winding >= 40 ? 'warm motor' : winding <= 25 ? 'cold motor' : 'motor'
  const air = vehicle.frontalAreaM2 * vehicle.dragCoefficient
  const airAssumed = ['vehicle.frontalAreaM2', 'vehicle.dragCoefficient'].some((path) =>
    isAssumed(build, path),
  )
  const groundAssumed = isAssumed(build, 'ground.gripCoefficient')
  const kind = presetOf(build.ground)?.label.toLowerCase() ?? 'ground by your own numbers'
  const slope = ground.gradePercent > 0 ? `, up ${percentWords(ground.gradePercent)}` : ', level'
  return [
    { words: `${warmth} (${degrees(winding)})`, assumed: false, path: 'service.windingTemperatureC' },
    {
      words: `pack at ${percentWords(service.stateOfChargePercent)}, ${degrees(service.packTemperatureC)}`,
      assumed: false,
      path: 'service.stateOfChargePercent',
    },
    ...(machine.controller.throttleCap < 1
      ? [
          {
            words: `throttle at most ${percentWords(controller.throttleCapPercent)}`,
            assumed: false,
            path: 'controller.throttleCapPercent',
          },
        ]
      : []),
    air > 0
      ? {
          words: airAssumed ? 'air drag by an assumed frontal area' : 'air drag counted',
          assumed: airAssumed,
          path: 'vehicle.frontalAreaM2',
        }
      : {
          words: 'air drag not counted: no frontal area entered',
          assumed: false,
          path: 'vehicle.frontalAreaM2',
        },
    {
      words: `${kind}${slope}${groundAssumed ? ', assumed' : ''}`,
      assumed: groundAssumed,
      path: ground.model === 'soil' ? 'ground.soil.n' : 'ground.rollingCoefficient',
    },
  ]
}

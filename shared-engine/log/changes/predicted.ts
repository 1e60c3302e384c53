import { machineOf } from '../../machine/machine.ts'
import type { Machine } from '../../machine/parts.ts'
import { kilo, secondsPerHour } from '../../units/factors.ts'
import { CruiseState, setCruise } from '../../vehicle/cruise.ts'
import { Motion, setRunning } from '../../vehicle/motion.ts'
import type { Course, Measure, Stretch } from './stretch.ts'

/** Steps of temperature, °C, and charge in which the build is worked out anew. */
const degrees = 5
const chargeStep = 0.02

/** A build at one charge and motor temperature. */
interface State {
  readonly machine: Machine
  readonly motion: Motion
}

const predictable: readonly Measure[] = ['packAmps', 'consumption', 'motorAmps']

/** What a build says of a stretch. */
export interface Predicted {
  knows(measure: Measure): boolean
  /** In the measure's unit; NaN where the build cannot do it. */
  of(measure: Measure, means: Stretch['means']): number
  /** What charge and temperature of a stretch do to it beside common ones; 0 of what the build does not say. */
  moved(measure: Measure, means: Stretch['means'], common: Stretch['means']): number
  /** Standard uncertainty of it from that of the charge. */
  open(measure: Measure, means: Stretch['means'], ofCharge: number): number
}

/**
 * What a course's build says of its stretches: level travel at their speed, at the
 * charge and motor temperature of each; of what the log does not tell the build's own entries stand.
 *
 * *Source:* `vehicle/cruise.ts`; V = V_oc − I R_b.
 */
export function predictedBy({ log }: Course): Predicted {
  const states = new Map<string, State>()
  const cruise = new CruiseState()
  const { build } = log.model
  const stateAt = ({ motorC, charge }: Stretch['means']): State => {
    const warm = Number.isFinite(motorC)
      ? Math.round(motorC / degrees) * degrees
      : build.service.windingTemperatureC
    const full = Number.isFinite(charge)
      ? Math.round(Math.min(1, Math.max(0, charge)) / chargeStep) * chargeStep
      : build.service.stateOfChargePercent / 100
    const key = `${warm} ${full}`
    const known = states.get(key)
    if (known !== undefined) return known
    const service = { ...build.service, windingTemperatureC: warm, stateOfChargePercent: 100 * full }
    const machine = machineOf({ ...build, service })
    const motion = new Motion()
    setRunning(motion, machine)
    const state = { machine, motion }
    states.set(key, state)
    return state
  }
  const of = (measure: Measure, means: Stretch['means']) => {
    const { machine, motion } = stateAt(means)
    const { openVolts, resistance } = machine.pack
    setCruise(cruise, machine, motion, means.speed)
    if (measure === 'motorAmps') return cruise.motorAmps
    if (measure === 'packAmps') return cruise.packAmps
    const watts = cruise.packAmps * (openVolts - cruise.packAmps * resistance)
    return ((watts / means.speed) * kilo) / secondsPerHour
  }
  const knows = (measure: Measure) => predictable.includes(measure)
  const apart = (measure: Measure, one: Stretch['means'], other: Stretch['means']) => {
    const difference = knows(measure) ? of(measure, one) - of(measure, other) : 0
    return Number.isFinite(difference) ? difference : 0
  }
  return {
    knows,
    of,
    moved: (measure, means, { charge, motorC }) => apart(measure, means, { ...means, charge, motorC }),
    open: (measure, means, ofCharge) => {
      const by = Math.max(chargeStep, ofCharge)
      const charge = Math.min(means.charge, 1 - by)
      const moved = apart(measure, { ...means, charge: charge + by }, { ...means, charge })
      return Math.abs((moved / by) * ofCharge)
    },
  }
}

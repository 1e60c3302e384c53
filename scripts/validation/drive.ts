import { machineOf } from '../../shared-engine/machine/machine.ts'
import { assumedTrackDrag } from '../../shared-engine/assume/machine.ts'
import { gravity } from '../../shared-engine/constants.ts'
import { freeSpeedAt } from '../../shared-engine/motor/free-speed.ts'
import { z } from '../../shared-engine/reference/zod.ts'
import { CruiseState, setCruise } from '../../shared-engine/vehicle/cruise.ts'
import { Motion, setRunning } from '../../shared-engine/vehicle/motion.ts'
import { toEngine } from '../../shared-engine/units/convert.ts'
import { rpmOf } from '../../shared-engine/units/rpm.ts'
import { buildOf, computation, storedBuild } from './case.ts'
import { directionOf, errorOf, errorsOf, rangeError, shown } from './words.ts'

/** J/m in W·h/km. */
const wattHoursPerKilometre = 1 / 3.6

/** J that the cells give for a metre of level travel. */
function energyPerMetre(name: string, dragShare: number, speed: number): number {
  const stored = storedBuild(name)
  const { massKg, loadKg = 0 } = stored.vehicle
  const internalDragN = dragShare * (massKg + loadKg) * gravity
  const machine = machineOf(buildOf({ ...stored, track: { ...stored.track, internalDragN } }))
  const motion = new Motion()
  setRunning(motion, machine)
  const cruise = new CruiseState()
  setCruise(cruise, machine, motion, speed)
  return (cruise.packAmps * machine.pack.openVolts) / speed
}

export const energyPerKilometre = computation(
  {
    build: z.string(),
    speedKmh: z.number(),
    lowWhPerKm: z.number(),
    highWhPerKm: z.number(),
    dragShares: z.array(z.number()),
  },
  ({ build, speedKmh, lowWhPerKm, highWhPerKm, dragShares }) => {
    const speed = toEngine(speedKmh, 'speed', 'km/h')
    const started = assumedTrackDrag(1) / gravity
    const found = dragShares.map((share) => energyPerMetre(build, share, speed) * wattHoursPerKilometre)
    const drag = (share: number) =>
      `${shown(100 * share)} % of the weight${Math.abs(share - started) < 1e-9 ? ', as a new build starts' : ''}`
    const pairs = found.map((each) => rangeError(each, lowWhPerKm, highWhPerKm))
    return {
      figure: found
        .map((each, at) => `${shown(each)} Wh/km with a drag of ${drag(dragShares[at] ?? NaN)}`)
        .join('; '),
      error: pairs.map(([figure, measured]) => errorOf(figure, measured)).join(', '),
      direction: directionOf(pairs, 'too far on a charge', 'not far enough on a charge'),
    }
  },
)

export const labelKv = computation(
  { build: z.string(), labelOverMeasured: z.array(z.number()) },
  ({ build, labelOverMeasured }) => {
    const stored = storedBuild(build)
    const freeSpeed = (kvRpmPerVolt: number) => {
      const machine = machineOf(buildOf({ ...stored, motor: { ...stored.motor, kvRpmPerVolt } }))
      return freeSpeedAt(machine, machine.pack.openVolts, machine.service.windingTemperature, 1)
    }
    const label = stored.motor.kvRpmPerVolt
    const pairs = labelOverMeasured.map((over) => [freeSpeed(label), freeSpeed(label / over)] as const)
    return {
      figure: `the label believed: ${shown(rpmOf(pairs[0]?.[0] ?? NaN), 4)} rpm without load, for ${pairs
        .map(([, measured]) => shown(rpmOf(measured), 4))
        .join(', ')} by the Kv measured`,
      error: errorsOf(pairs),
      direction: directionOf(pairs, 'free speed too low', 'free speed too high'),
    }
  },
)

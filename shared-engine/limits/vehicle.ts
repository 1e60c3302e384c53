import { defineLimits, setMaximum, setMinimum, type Limit } from './limit.ts'

const force = { part: 'vehicle', unit: 'N', kind: 'force' } as const

/** Limits of the whole machine. Each `measure` is the row of the same id in engine contract §8. */
export const vehicleLimits: readonly Limit[] = defineLimits([
  {
    id: 'vehicle.front-lift',
    label: 'Front lifting',
    ...force,
    question: 'hold',
    sense: 'maximum',
    needs: ['vehicle.cgHeightMm', 'vehicle.cgAheadMm'],
    measure: (out, e) =>
      !Number.isNaN(e.frontLiftThrust) && setMaximum(out, e.frontLiftPush, e.frontLiftThrust, 'rest'),
  },
  {
    id: 'vehicle.start',
    label: 'Starting from rest',
    ...force,
    question: 'hold',
    sense: 'minimum',
    needs: [],
    measure: (out, e) =>
      setMinimum(out, Math.min(e.startThrust, e.footing.gripThrust), e.footing.standingResistance, 'rest'),
  },
  {
    id: 'vehicle.pivot-turn',
    label: 'Turning on the spot',
    ...force,
    question: 'hold',
    sense: 'minimum',
    needs: ['vehicle.gaugeMm', 'vehicle.contactLengthMm', 'ground.turnFriction'],
    measure: (out, e) =>
      !Number.isNaN(e.pivotThrust) &&
      setMinimum(out, Math.min(e.startThrust, e.level.gripThrust) / 2, e.pivotThrust, 'rest'),
  },
])

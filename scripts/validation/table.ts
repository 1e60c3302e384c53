import type { Computation } from './case.ts'
import { energyPerKilometre, labelKv } from './drive.ts'
import { firmGround, roadWheels, robotOnSoftSnow, settledSnowPull, twoTracks } from './ground.ts'
import { coldCapacity, voltsLate } from './pack.ts'
import { air, beltLengthOf, chainsEuropean, contactRatio, toothRoot } from './parts.ts'

/** How each case with inputs is computed, by its id. */
export const computations: Readonly<Record<string, Computation>> = {
  'energy-per-kilometre': energyPerKilometre,
  'robot-on-soft-snow': robotOnSoftSnow,
  'firm-ground': firmGround,
  'settled-snow-pull': settledSnowPull,
  'road-wheels': roadWheels,
  'label-kv': labelKv,
  'volts-late': voltsLate,
  'cold-capacity': coldCapacity,
  'tooth-root': toothRoot,
  'chains-european': chainsEuropean,
  'two-tracks': twoTracks,
  air,
  'contact-ratio': contactRatio,
  'belt-length': beltLengthOf,
}

import { assumedCellResistance } from '../../shared-engine/assume/machine.ts'
import { chemistryIds, openCircuitVolts } from '../../shared-engine/reference/chemistry.ts'
import { coldCapacityShare } from '../../shared-engine/reference/heat.ts'
import { z } from '../../shared-engine/reference/zod.ts'
import { fromEngine, toEngine } from '../../shared-engine/units/convert.ts'
import { computation } from './case.ts'
import { directionOf, errorsOf, shown } from './words.ts'

export const coldCapacity = computation({ celsius: z.number(), share: z.number() }, ({ celsius, share }) => {
  const found = coldCapacityShare(celsius)
  const pairs = [[found, share]] as const
  return {
    figure: shown(found),
    error: errorsOf(pairs),
    direction: directionOf(pairs, 'safe side', 'too much charge'),
  }
})

export const voltsLate = computation(
  {
    chemistry: z.enum(chemistryIds),
    capacityMah: z.number(),
    dischargeC: z.number(),
    points: z.array(z.strictObject({ usedPercent: z.number(), volts: z.number() })),
  },
  ({ chemistry, capacityMah, dischargeC, points }) => {
    const resistance = assumedCellResistance(toEngine(capacityMah, 'charge', 'mAh'), chemistry)
    const sag = (dischargeC * capacityMah * resistance) / 1000
    const found = points.map(({ usedPercent, volts }) => {
      const resting = openCircuitVolts(chemistry, 1 - toEngine(usedPercent, 'fraction'))
      return { resting, loaded: resting - sag, volts }
    })
    const pairs = found.map(({ loaded, volts }) => [loaded, volts] as const)
    const milliohm = shown(fromEngine(resistance, 'ohms'), 2)
    return {
      figure: `${found.map(({ loaded }) => shown(loaded)).join(' and ')} V with ${milliohm} mΩ; ${found
        .map(({ resting }) => shown(resting))
        .join(' and ')} V at rest`,
      error: errorsOf(pairs),
      direction: directionOf(pairs, 'safe side', 'too many volts'),
    }
  },
)

import { fromEngine } from '../units/convert.ts'
import type { QuantityKind } from '../units/kinds.ts'
import { alarmsOf, type Alarm } from './alarms.ts'
import type { RpmGuard } from './guard.ts'
import type { Checked } from '../check.ts'
import { signalLost } from './words.ts'

/** One alarm for programs: numbers in the unit beside them, and what belongs to it alone. */
type AlarmRow = { readonly id: string; readonly value: number; readonly unit: string } & Partial<
  Pick<Alarm, 'ohm' | 'voltsAtRms' | 'guards' | 'earlier'> & Pick<RpmGuard, 'from' | 'seconds' | 'capPercent'>
>

const units: Partial<Record<QuantityKind, string>> = {
  volts: 'V',
  amps: 'A',
  temperature: 'degC',
  rpm: 'rpm',
  duration: 's',
}

/** The alarms that can be set, in the card's order. *Source:* `docs/model.md` §12. */
export function alarmRows(checked: Checked): readonly AlarmRow[] {
  const rows = alarmsOf(checked).flatMap(({ id, value, kind, ohm, voltsAtRms, guards, earlier, rpm }) => {
    if (value === null) return []
    const [shown, unit] =
      kind === 'charge' ? [fromEngine(value, 'charge', 'Ah'), 'Ah'] : [value, units[kind] ?? kind]
    return {
      id,
      value: shown,
      unit,
      ...(ohm === undefined ? {} : { ohm }),
      ...(voltsAtRms === undefined ? {} : { voltsAtRms }),
      ...(rpm === undefined ? {} : { from: rpm.from, seconds: rpm.seconds, capPercent: rpm.capPercent }),
      ...(guards === undefined ? {} : { guards }),
      ...(earlier === undefined ? {} : { earlier }),
    }
  })
  return [...rows, { id: signalLost.id, value: signalLost.seconds, unit: 's' }]
}

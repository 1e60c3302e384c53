import { referenceTemperature } from '../../motor/constants.ts'
import { DriveLine, setDriveLine } from '../../motor/drive-line.ts'
import type { Bench } from '../bench.ts'

/** The motor's constants at 20 °C: K_t and the no-load current over speed. */
export function motorLineOf(bench: Bench): DriveLine {
  const line = new DriveLine()
  setDriveLine(line, bench.machine, 0, referenceTemperature, 1)
  return line
}

import type { Machine } from '../machine/parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { measureBrakes } from './brakes.ts'
import { measureController } from './controller.ts'
import { measureConverters } from './converter.ts'
import { measureCooling } from './cooling.ts'
import { measureFuse } from './fuse.ts'
import type { Ledger } from './ledger.ts'
import { measureMotor } from './motor.ts'
import { measurePack } from './pack.ts'
import { measureStages } from './stage.ts'
import { measureSupplies } from './supply.ts'
import { measureSeats } from './seat-limits.ts'
import { measureTrackStop } from './track-stop.ts'
import { measureTrack } from './track.ts'
import { measureVehicle } from './vehicle.ts'
import { measureWires } from './wire.ts'

/** Adds to the ledger the limits of one part that the machine has. */
type Measure = (ledger: Ledger, e: Evaluation, machine: Machine) => void

/** In the ledger's order; a list for the same reason as the steps of `evaluate`. */
const measures: readonly Measure[] = [
  measureMotor,
  measureController,
  measurePack,
  measureCooling,
  measureTrack,
  measureTrackStop,
  measureSeats,
  measureVehicle,
  measureBrakes,
  measureStages,
  measureConverters,
  measureSupplies,
  measureFuse,
  measureWires,
]

/** Measures every limit that applies. *Source:* `docs/model.md` §8. */
export function measureLedger(ledger: Ledger, e: Evaluation, machine: Machine): void {
  ledger.count = 0
  for (const measure of measures) measure(ledger, e, machine)
}

import type { Machine } from '../build/machine-parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { measureController } from './controller.ts'
import { measureConverters } from './converter.ts'
import type { Ledger } from './ledger.ts'
import { measureMotor } from './motor.ts'
import { measurePack } from './pack.ts'
import { measureStages } from './stage.ts'
import { measureTrack } from './track.ts'
import { measureVehicle } from './vehicle.ts'

/** Measures every limit that applies. *Source:* engine contract §8. */
export function measureLedger(ledger: Ledger, e: Evaluation, machine: Machine): void {
  ledger.count = 0
  measureMotor(ledger, e, machine)
  measureController(ledger, e, machine)
  measurePack(ledger, e, machine)
  measureTrack(ledger, e, machine)
  measureVehicle(ledger, e)
  measureStages(ledger, e, machine)
  measureConverters(ledger, machine)
}

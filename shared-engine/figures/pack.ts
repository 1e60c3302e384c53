import type { Machine } from '../machine/parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { figureRows } from './figure.ts'

/** Pack, accessories and bus. */
export class PackFigures {
  packOhm = NaN
  packOpenVolts = NaN
  accessoryAmps = NaN
}

/** Fills them from an evaluation, each in the unit that its name ends with, else in SI; NaN where one does not exist. */
export function setPackFigures(values: PackFigures, e: Evaluation, machine: Machine): void {
  values.packOhm = machine.pack.resistance
  values.packOpenVolts = machine.pack.openVolts
  values.accessoryAmps = e.accessoryAmps
}

export const packFigures = figureRows(new PackFigures(), setPackFigures, {
  packOhm: ['Pack resistance', 'ohms'],
  packOpenVolts: ['Pack volts at rest', 'volts'],
  accessoryAmps: ['Accessory current', 'amps'],
})

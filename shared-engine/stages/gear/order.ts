import { formatText } from '../../units/display.ts'
import type { UnitSystem } from '../../units/kinds.ts'
import type { GearStage } from './machine.ts'

const shiftText = (shift: number) => String(Number(shift.toFixed(3))).replace('-', '−')

/**
 * What to buy or cut for a pair of gears, in words.
 *
 * *Source:* ISO 21771 for the centre distance, as in the mesh.
 */
export function gearOrder(stage: GearStage, system: UnitSystem): string {
  const { driverTeeth, drivenTeeth, driverShift, drivenShift, module, pressureAngle, faceWidth, mesh } = stage
  const shifted = driverShift !== 0 || drivenShift !== 0
  const shifts = shifted ? `, profile shifts ${shiftText(driverShift)} and ${shiftText(drivenShift)}` : ''
  const cut = `module ${formatText(module, 'gearModule', system)}, pressure angle ${formatText(pressureAngle, 'angle', system)}`
  const width = `${formatText(faceWidth, 'length', system)} wide${shifts}`
  return `pinion of ${driverTeeth} and wheel of ${drivenTeeth} teeth, ${cut}, ${width}; centre distance ${formatText(mesh.centre * module, 'length', system)}`
}

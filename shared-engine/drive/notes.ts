import type { DriveModel } from './model.ts'

/** What the numbers of a drive leave out or lean on. */
export function notesOf({ machine, heat, rotorMassAdded, rows }: DriveModel): string[] {
  const { cooling, motor, service } = machine
  return [
    'A wanted speed is approached as a calm driver would, closing the gap within about 1 s [assumption]; at rest nothing rolls back.',
    'What spins the track up for some tenths of a second is reported apart from the peaks of current and volts.',
    ...(rotorMassAdded > 0
      ? ['So light a belt would find its speed within a millisecond; here it takes one [assumption].']
      : []),
    ...(heat.winding === null
      ? [
          `Without the winding's heat capacity and thermal resistance it is held at service.windingTemperatureC, ${service.windingTemperature} °C.`,
        ]
      : []),
    ...(heat.twoNodes || motor.thermalResistance === null
      ? []
      : ['The motor is one lump of heat: a short burst heats its winding sooner than shown.']),
    ...(heat.controller === null
      ? [
          'Without controller.heatCapacityJPerK and controller.thermalResistanceKPerW the controller’s temperature is not followed.',
        ]
      : []),
    ...(cooling === null ? [] : ['The coolant’s flow follows its thickness; the pump’s power does not.']),
    ...(rows.some(({ row, turnShare }) => row.turnShare > 0 && turnShare === 0)
      ? [
          'Turns are left out: they need an even number of motors and loops, vehicle.gaugeMm, vehicle.contactLengthMm and ground.turnFriction.',
        ]
      : []),
  ]
}

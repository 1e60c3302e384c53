import { expect, it } from 'vitest'
import { powerPath, powerPathKey } from '../../../shared-engine/draw/power-path.ts'
import { drawnMachines } from '../../drawings/machines.ts'

const look = { width: 1280, system: 'metric' } as const

it('an edit that leaves the drawing as it is leaves its key, and no other edit does', () => {
  for (const { machine } of Object.values(drawnMachines)) {
    const key = powerPathKey(machine, look)
    const motor = { ...machine.motor, torqueConstant: machine.motor.torqueConstant * 1.1 }
    expect(powerPathKey({ ...machine, motor }, look)).toBe(key)
    const changed = [
      { ...machine, motor: { ...machine.motor, polePairs: machine.motor.polePairs + 1 } },
      { ...machine, pack: { ...machine.pack, series: machine.pack.series + 1 } },
      { ...machine, track: { ...machine.track, sprocketTeeth: machine.track.sprocketTeeth + 1 } },
      { ...machine, ground: { ...machine.ground, grade: machine.ground.grade + 0.1 } },
    ]
    for (const other of changed) {
      expect(powerPathKey(other, look)).not.toBe(key)
      expect(powerPath(other, look)).not.toEqual(powerPath(machine, look))
    }
    expect(powerPathKey(machine, { ...look, width: 1300 })).not.toBe(key)
  }
})

it('tells what is not finite from what is not there', () => {
  const { machine } = drawnMachines.quick
  const of = (centreAhead: number | null) =>
    powerPathKey({ ...machine, vehicle: { ...machine.vehicle, centreAhead } }, look)
  expect(of(Infinity)).not.toBe(of(null))
})

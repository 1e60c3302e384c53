import { expect, it } from 'vitest'
import { storedWords } from '../../src-renderer/fields/stored-words.ts'

it.each([
  ['vehicle.massKg', 41, 'metric', '41 kg'],
  ['vehicle.massKg', 45.359237, 'imperial', '100 lb'],
  ['motor.count', 1, 'metric', '1 motor'],
  ['pack.capacityMah', 10000, 'metric', '10,000 mAh'],
  ['controller.maxElectricalRpm', 120000, 'metric', '120,000 rpm'],
  ['ground.airTemperatureC', -6, 'metric', '−6 °C'],
  ['stages.0.driverTeeth', 12, 'metric', '12 teeth'],
  ['stages.0.moduleMm', 1.5, 'imperial', '1.5 mm'],
  ['origins.vehicle.massKg', 'measured', 'metric', 'Measured'],
  ['tolerances.vehicle.massKg', { plusMinusPercent: 5, shape: 'uniform' }, 'metric', '± 5 %'],
  ['tolerances.vehicle.massKg', { plusMinus: 0.2, shape: 'normal' }, 'metric', '± 0.2 kg, mostly near'],
  ['name', 'A long name that would push all other words of its line aside', 'metric', /^A long name .{27}…$/],
  ['notes', '', 'metric', '–'],
  ['vehicle.massKg', undefined, 'metric', '–'],
] as const)('%s as %s in %s is told as %s', (path, value, system, told) => {
  const words = storedWords(path, value, system)
  if (typeof told === 'string') expect(words).toBe(told)
  else expect(words).toMatch(told)
})

import { expect, it } from 'vitest'
import { check } from '../../../shared-engine/check.ts'
import { waitedFor } from '../../../shared-engine/explain/waiting.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { readBuildOf } from '../../fixtures/build/machine.ts'
import { plainBuild } from '../../fixtures/build/plain.ts'

// What a motor's heat lacks, by the contract: one node reads thermal resistance and heat capacity; where winding to case
// and case to sink are both given those are not read, and each node has a capacity of its own.

const nodes = { windingToCaseKPerW: 0.4, caseToSinkKPerW: 0.6 }
const capacities = { windingHeatCapacityJPerK: 60, caseHeatCapacityJPerK: 400 }

function lackOf(motor: Partial<StoredBuild['motor']>) {
  const plain = plainBuild()
  const checked = check(readBuildOf({ ...plain, motor: { ...plain.motor, ...motor } }))
  const about = (id: string) => checked.notJudged.find((one) => one.id === id)?.needs ?? []
  const waited = waitedFor(checked)
    .filter(({ limits }) => limits.includes('motor.burst-heat'))
    .map(({ path }) => path)
  return { burst: about('motor.burst-heat'), temperature: about('motor.temperature'), waited }
}

it.each([
  [
    'nothing',
    {},
    ['motor.thermalResistanceKPerW', 'motor.heatCapacityJPerK'],
    ['motor.thermalResistanceKPerW'],
  ],
  [
    'half of two nodes',
    { windingToCaseKPerW: 0.4 },
    ['motor.thermalResistanceKPerW', 'motor.heatCapacityJPerK'],
    ['motor.thermalResistanceKPerW'],
  ],
  ['two nodes', nodes, ['motor.windingHeatCapacityJPerK', 'motor.caseHeatCapacityJPerK'], []],
  [
    'two nodes with a winding that stores',
    { ...nodes, windingHeatCapacityJPerK: 60 },
    ['motor.caseHeatCapacityJPerK'],
    [],
  ],
  // A burst that never warms it to its limit is not judged, and nothing lacks for it.
  ['all of two nodes', { ...capacities, windingToCaseKPerW: 0.001, caseToSinkKPerW: 0.001 }, [], []],
] as const)('a motor with %s', (_name, motor, burst, temperature) => {
  expect(lackOf(motor)).toEqual({ burst, temperature, waited: burst })
})

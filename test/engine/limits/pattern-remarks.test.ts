import { expect, it } from 'vitest'
import { check } from '../../../shared-engine/check.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { readBuildOf } from '../../fixtures/build/machine.ts'
import { plainBuild } from '../../fixtures/build/plain.ts'

const starved = /^Half-way to its reserve .* the pack cannot feed/
const runaway = /^Thermal runaway/

/** A demo pack of six cells of 10 mΩ at 25 °C, 60 % half-way between full and its reserve of 20 %. */
function told(watts: number): { notes: readonly string[]; minutes: number | null | undefined } {
  const plain = plainBuild()
  const stored: StoredBuild = {
    ...plain,
    pack: { ...plain.pack, chemistry: 'lipo', series: 6, parallel: 1, cellResistanceMilliohm: 10 },
    motor: { ...plain.motor, thermalResistanceKPerW: 1 },
    service: { packTemperatureC: 25, stateOfChargePercent: 100, reservePercent: 20 },
    accessories: [{ name: 'winch', watts }],
  }
  const { notes, figures } = check(readBuildOf(stored))
  return { notes, minutes: figures.patternMinutes }
}

// The most that a source gives is V_oc²/(4 R) (Kirchhoff; half the volts lost inside): 25.2²/0.24 = 2646 W full, at 60 %, where a
// resting cell has 3.87 V (the table of cells), 23.22²/0.24 = 2246.5 W.
it('says that a pack which feeds its accessories when full cannot do so half-way to the reserve', () => {
  const weak = told(2260)
  expect(weak.minutes).toBeNull()
  expect(weak.notes.filter((note) => starved.test(note))).toHaveLength(1)
  expect(weak.notes.filter((note) => runaway.test(note))).toEqual([])
})

it('says nothing of it where the pack still feeds them there', () => {
  const fed = told(2230)
  expect(fed.minutes).toBeGreaterThan(0)
  expect(fed.notes.filter((note) => starved.test(note))).toEqual([])
})

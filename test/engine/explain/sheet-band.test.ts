import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { check } from '../../../shared-engine/check.ts'
import { completeBuild, readStoredBuild } from '../../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { lowestBySheet, sheetBandWords } from '../../../shared-engine/explain/sheet-band.ts'
import { soilBuild } from '../../fixtures/build/plain.ts'

// Against reality (docs/validation.md): labels say 0 to 10 % more Kv than motors have, sheets a half of the resistance.

const read = readStoredBuild(readFileSync('examples/quick-sled-puller.build.json'))
if (!read.ok) throw new Error('the demo cannot be read')
const demo = read.value
const checkedWith = (change: Partial<StoredBuild['motor']>, origins: NonNullable<StoredBuild['origins']>) =>
  check(completeBuild({ ...demo, motor: { ...demo.motor, ...change }, tolerances: {}, origins }))

describe('top speed by the maker’s values', () => {
  it('is a point where the motor was measured', () => {
    const measured = checkedWith({}, { 'motor.kvRpmPerVolt': 'measured' })
    expect(lowestBySheet(measured)).toBeNull()
    expect(sheetBandWords(measured, 'metric')).toBe('')
  })

  it('is a band where Kv and resistance are stated: down to that of a tenth less Kv and 2.5 times the resistance', () => {
    const stated = checkedWith({}, { 'motor.kvRpmPerVolt': 'stated', 'motor.resistanceMilliohm': 'stated' })
    const worst = checkedWith({ kvRpmPerVolt: 630, resistanceMilliohm: 23.75 }, {})
    // The same machine entered with those values.
    expect(lowestBySheet(stated)).toBeCloseTo(worst.figures.topSpeedMps ?? NaN, 9)
    expect(sheetBandWords(stated, 'metric')).toMatch(
      /upper end: motors that were measured had up to 10 % less Kv and 1\.8 to 2\.5 times the resistance under load; the worst of them comes to [\d.]+\skm\/h/,
    )
  })
})

describe('ruts under few wheels', () => {
  it('are told where the machine sinks in: as much deeper as 2 and 3 times the pressure makes them', () => {
    // Fresh snow of Wong's worked comparison.
    const soil = { n: 1.6, kc: 4.37, kphi: 196.72, cohesionKpa: 1, frictionDegrees: 19.7, shearModulusMm: 50 }
    const checked = check(
      completeBuild({ ...soilBuild(), ground: { model: 'soil', soil }, tolerances: {}, origins: {} }),
    )
    const note = checked.notes.find((text) => text.startsWith('Sinkage counts an even pressure'))
    const [mean, low, high] = [...(note ?? '').matchAll(/([\d.]+)\smm/g)].map(([, text]) => Number(text))
    // z = (p/k)^{1/n}
    expect((low ?? NaN) / (mean ?? NaN)).toBeCloseTo(2 ** (1 / soil.n), 1)
    expect((high ?? NaN) / (mean ?? NaN)).toBeCloseTo(3 ** (1 / soil.n), 1)
  })

  it('are not told on ground that is not sunk into', () => {
    expect(check(completeBuild(demo)).notes.some((text) => text.startsWith('Sinkage'))).toBe(false)
  })
})

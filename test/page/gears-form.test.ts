import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readSpaceText } from '../../shared-engine/search/space-read.ts'
import { planOf } from '../../shared-engine/search/space.ts'
import { readStoredBuildText, type StoredBuild } from '../../shared-engine/index.ts'
import { rawKeyIn } from '../fixtures/text/odd.ts'
import { formOf, spaceOf, spaceTrouble, startingForm } from '../../src-renderer/questions/gears/form.ts'
import { readOwned, readValues, valuesText } from '../../src-renderer/questions/gears/values.ts'

const text = (file: string) => readFileSync(new URL(`../../examples/${file}`, import.meta.url), 'utf8')

function stoat(): StoredBuild {
  const read = readStoredBuildText(text('quick-sled-puller.build.json'))
  if (!read.ok) throw new Error('the demo cannot be read')
  return read.value
}

describe('values to try', () => {
  it.each([
    ['9..24', { from: 9, to: 24, step: 1 }],
    ['60 to 100 step 5', { from: 60, to: 100, step: 5 }],
    ['9-24', { from: 9, to: 24, step: 1 }],
    ['9 – 24', { from: 9, to: 24, step: 1 }],
    ['9-24 step 2', { from: 9, to: 24, step: 2 }],
    ['9…24 by 3', { from: 9, to: 24, step: 3 }],
    ['12; 15; 18', [12, 15, 18]],
    ['12, 15, 18', [12, 15, 18]],
    ['9..11, 15', [9, 10, 11, 15]],
    ['pinions', 'pinions'],
  ])('%s is read, and read again as it is shown', (typed, values) => {
    expect(readValues(typed, ['pinions'])).toEqual(values)
    expect(readValues(valuesText(values), ['pinions'])).toEqual(values)
  })

  it.each(['', 'abc', '9..', '12,,15', '9..24 step'])('"%s" is refused', (typed) => {
    expect(readValues(typed, [])).toBeNull()
  })

  it('lists of teeth owned are read line by line', () => {
    expect(readOwned('pinions: 12, 15\nbare\nsprockets: 8..10')).toEqual({
      lists: { pinions: [12, 15], sprockets: [8, 9, 10] },
      wrong: ['bare'],
    })
  })
})

describe('what is wrong with what is asked', () => {
  it.each([
    ['vary.stages.0.driverTeeth.to', 'Driver’s teeth, stage 1 is 9, out of range; allowed: from 24.'],
    ['vary.track.sprocketTeeth', 'Teeth of the drive sprocket is 9, out of range; allowed: from 24.'],
  ])('%s is said by its name, not by its key', (path, words) => {
    const mistake = { code: 'out-of-range', path, value: '9', allowed: 'from 24', kept: '' } as const
    expect(spaceTrouble(mistake)).toBe(words)
  })
})

describe('what is asked', () => {
  it('of a demo as it stands can be searched at once', () => {
    const asked = spaceOf(startingForm(stoat(), 'metric'), stoat(), 'metric')
    expect(asked.troubles).toEqual({})
    const plan = planOf(stoat(), asked.space)
    // 16 drivers, 16 drivers, 9 sprockets, 9 throttle caps
    expect(plan.ok && plan.value.total).toBe(16 * 16 * 9 * 9)
  })

  it.each(['metric', 'imperial'] as const)('in a file comes back to the same candidates, %s', (system) => {
    const read = readSpaceText(text('quick-sled-puller.space.json'))
    if (!read.ok) throw new Error('the space cannot be read')
    const back = spaceOf(formOf(read.value, stoat(), system), stoat(), system)
    expect(back.troubles).toEqual({})
    expect(back.space.vary).toEqual(read.value.vary)
    expect(back.space.owned).toEqual(read.value.owned)
    expect(back.space.hold?.margins).toEqual(read.value.hold?.margins)
    expect(back.space.hold?.figures?.[0]?.atLeast).toBeCloseTo(40 / 3.6, 9) // 40 km/h, exact factor; rounding only
  })

  it('says what is wrong at its place and keeps the rest', () => {
    const form = startingForm(stoat(), 'metric')
    const rows = form.rows.map((row) => (row.path === 'track.sprocketTeeth' ? { ...row, text: 'x' } : row))
    const { troubles, space } = spaceOf(
      { ...form, rows, bounds: [{ figure: 'topSpeedMps', side: 'atLeast', text: '40 kg' }] },
      stoat(),
      'metric',
    )
    expect(Object.keys(troubles).sort()).toEqual(['bound.0', 'vary.track.sprocketTeeth'])
    expect(Object.keys(space.vary)).toContain('stages.0.driverTeeth')
  })

  it('names an entry as the form does, wherever the engine names it by its key', () => {
    const vary = (owned: boolean) => ({
      format: 'pitchline-space',
      version: 1,
      ...(owned ? { owned: { wheels: [201] } } : {}),
      vary: { 'track.sprocketTeeth': owned ? 'wheels' : [201] },
      aim: [{ figure: 'topSpeedMps', best: 'most' }],
    })
    for (const owned of [false, true]) {
      const read = readSpaceText(JSON.stringify(vary(owned)))
      const mistakes = read.ok ? planOf(stoat(), read.value) : read
      const said = mistakes.ok ? [] : mistakes.mistakes.map(spaceTrouble)
      expect(said.join(' ')).toContain('Teeth of the drive sprocket')
      expect(said.map(rawKeyIn)).toEqual([null])
    }
  })
})

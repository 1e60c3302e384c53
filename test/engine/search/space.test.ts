import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { withEntry } from '../../../shared-engine/entries/edit.ts'
import { completeBuild } from '../../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { check } from '../../../shared-engine/check.ts'
import { secondsToSpeed } from '../../../shared-engine/search/seconds-to.ts'
import { variablePathsOf } from '../../../shared-engine/search/space-axes.ts'
import { readSpace, readSpaceText, readSpaceValue } from '../../../shared-engine/search/space-read.ts'
import { choicesOf, planOf } from '../../../shared-engine/search/space.ts'
import { sentenceOf } from '../../../shared-engine/mistakes/catalogue.ts'
import type { Result } from '../../../shared-engine/mistakes/mistake.ts'
import { demo, planned } from './support.ts'

const stoat = demo('quick-sled-puller')
const newt = demo('culvert-crawler')
const ibex = demo('hut-hauler')

const head = { format: 'pitchline-space', version: 1 }
const aim = { figure: 'topSpeedMps', best: 'most' }
const vary = { 'track.sprocketTeeth': [9, 10] }

const told = (result: Result<unknown>) => (result.ok ? [] : result.mistakes.map(sentenceOf))
const reading = (space: object) => told(readSpaceValue({ ...head, ...space }))

/** What is wrong with a space that reads, on a build. */
function fitting(space: object, stored: StoredBuild = stoat): string[] {
  const read = readSpaceValue({ ...head, vary, aim, ...space })
  if (!read.ok) throw new Error(told(read).join('\n'))
  return told(planOf(stored, read.value))
}

describe('a space file', () => {
  it.each(['quick-sled-puller', 'culvert-crawler', 'hut-hauler'])('of the demo build %s fits it', (name) => {
    const read = readSpace(readFileSync(new URL(`../../../examples/${name}.space.json`, import.meta.url)))
    expect(told(read)).toEqual([])
    if (read.ok) expect(told(planOf(demo(name), read.value))).toEqual([])
  })

  it('that is something else says so', () => {
    expect(told(readSpaceText('{"format":"pitchline-build","version":1}'))).toEqual([
      'format is "pitchline-build": this is not a search space; allowed: "pitchline-space".',
    ])
    expect(reading({ version: 2 })).toEqual([
      'version is 2: the file is from a newer Pitchline than this one; allowed: up to 1.',
    ])
    expect(told(readSpaceText('[]'))).toEqual(
      ['the file is a list of 0, not a group of entries; allowed: keys and values in braces.'].map((line) =>
        line.replace('a list of 0', 'an empty list'),
      ),
    )
    expect(told(readSpaceText('{'))[0]).toMatch(/^the file is not JSON/)
    expect(told(readSpaceText(''))[0]).toMatch(/^the file is not JSON/)
    expect(told(readSpace(new Uint8Array([0xff, 0xfe, 0x7b])))).toEqual(['the file is not UTF-8 text.'])
    expect(told(readSpace(new Uint8Array(1_048_577)))).toEqual([
      'the file is too large: 1.0 MiB; allowed: at most 1 MiB.',
    ])
    expect(
      told(
        readSpaceText(
          `{"format":"pitchline-space","format":"pitchline-space","version":1,"vary":{"pack.series":[6]},"aim":${JSON.stringify(aim)}}`,
        ),
      ),
    ).toEqual(['format stands in the file more than once; keep one.'])
    expect(told(readSpaceText('{"__proto__":{},"format":"pitchline-space","version":1}'))).toEqual([
      '__proto__ is a key that no file may have; take it out.',
    ])
  })

  it('lists every mistake in it at once', () => {
    expect(
      reading({
        vary: {
          'pack.series': [6, 'eight'],
          'track.sprocketTeeth': { from: 8, to: 10 },
          motor: [{ name: '', motor: {} }],
        },
        hold: { margins: { '*': 2, 'track.*': '0.2' }, figures: [{ figure: 'topSpeedMps', atleast: 5 }] },
        aim: { figure: 'topSpeedMps', best: 'highest' },
        keep: 0,
        extra: true,
      }).toSorted(),
    ).toEqual([
      'aim.best is "highest", not one of the choices; allowed: most or least.',
      'extra is not a part of a search space.',
      'hold.figures.0.atleast is not a part of a search space; allowed: a bound: "figure" with "atLeast" or "atMost".',
      'hold.margins.* is 2, out of range; allowed: −10 to 1 (0.2 keeps 20 % in hand), or null to leave the limit out.',
      'hold.margins.track.* is "0.2", not a number; allowed: −10 to 1 (0.2 keeps 20 % in hand), or null to leave the limit out.',
      'keep is 0, out of range; allowed: a whole number, 1 to 500.',
      'vary.motor.0.name is missing; allowed: text of at most 120 characters.',
      'vary.pack.series.1 is "eight", not a number; allowed: a number.',
      'vary.track.sprocketTeeth.step is missing; allowed: the step from one value to the next.',
    ])
  })
})

describe('a space on a build', () => {
  it('lists every mistake at once', () => {
    expect(
      fitting({
        owned: { pinions: [12, 3], empty: [] },
        vary: {
          'stages.0.driverTeeth': 'pinions',
          'stages.0.drivenTeeth': 'wheels',
          'stages.1.driverTeeth': 'empty',
          'stages.0.ratio': [2],
          'pack.series': [6, 6, 61, 7.5],
          'track.sprocketTeeth': { from: 12, to: 8, step: 0 },
        },
        hold: {
          margins: { 'track.tooth-shaer': 0, 'stage.3.bending': 0, 'vehicle.pivot-turn': 0, 'nothing.*': 0 },
          figures: [
            { figure: 'topSpeed', atLeast: 5 },
            { figure: 'topSpeedMps' },
            { figure: 'topSpeedMps', atLeast: '40 kg' },
            { figure: 'secondsTo', atMost: 4 },
            { figure: 'topMotorRpm', speed: 5, atMost: 4 },
          ],
        },
      }).map((line) => line.replace(/(such as|or of|for all,) .*|allowed: stages.*/, '…')),
    ).toMatchInlineSnapshot(`
      [
        "vary.stages.0.ratio cannot be varied here; …",
        "vary.pack.series.2 is 61, out of range; allowed: a whole number, 1 to 60 cells.",
        "vary.pack.series.3 is 7.5, out of range; allowed: a whole number, 1 to 60 cells.",
        "vary.pack.series lists 6 more than once; once is enough.",
        "owned.pinions.1 is 3, out of range; allowed: a whole number, 4 to 1,000 teeth, for stages.0.driverTeeth.",
        "vary.stages.0.drivenTeeth names the list "wheels", which the space does not have; allowed: pinions, empty.",
        "owned.empty is an empty list; allowed: 1 to 10,000 values.",
        "vary.track.sprocketTeeth.step is 0, out of range; allowed: above 0.",
        "vary.track.sprocketTeeth.to is 8, out of range; allowed: from 12.",
        "there is no figure or limit "track.tooth-shaer"; allowed: * …",
        "the limit "stage.3.bending" does not apply to this build; allowed: * …",
        "the limit "vehicle.pivot-turn" does not apply to this build; allowed: with vehicle.gaugeMm, ground.turnFriction in the build.",
        "there is no figure or limit "nothing.*"; allowed: * …",
        "there is no figure or limit "topSpeed"; allowed: worstMargin, secondsTo, or a figure of check …",
        "hold.figures.1 asks for nothing; allowed: "atLeast", "atMost" or both.",
        "hold.figures.2.atLeast is "40 kg", which is not understood; allowed: m/s, km/h, mph, ft/s, mm/s.",
        "hold.figures.3.speed is missing; allowed: the speed to reach, …",
        "hold.figures.4.speed is not a part of a search space; allowed: only with "figure": "secondsTo".",
      ]
    `)
  })

  it('refuses a motor that its build would refuse, with the place in the list', () => {
    const { noLoadVolts: _, ...incomplete } = stoat.motor
    expect(
      fitting({
        vary: {
          motor: [
            { name: 'a', motor: stoat.motor },
            { name: 'a', motor: { ...incomplete, poleCount: 3 } },
          ],
        },
      }),
    ).toEqual([
      'vary.motor.1.motor.noLoadVolts is missing; allowed: 0.5 to 400 V.',
      'vary.motor.1.motor.poleCount is 3 poles; allowed: an even number: poles come in pairs.',
      'vary.motor lists "a" more than once; once is enough.',
    ])
  })

  it('refuses more candidates than can be waited for', () => {
    const many = { from: 4, to: 1000, step: 1 }
    const pairs = { from: 4, to: 7, step: 1 }
    expect(
      fitting({
        vary: {
          'stages.0.driverTeeth': many,
          'stages.0.drivenTeeth': many,
          'stages.1.driverTeeth': many,
          'track.sprocketTeeth': pairs,
        },
      }),
    ).toEqual(['vary holds too many: 3,964,107,892 combinations; allowed: at most 1,000,000,000.'])
    expect(fitting({ vary: {} })).toEqual(['vary is missing; allowed: at least one entry to vary.'])
  })

  it('varies what its reductions have', () => {
    expect(variablePathsOf(ibex).slice(0, 3)).toEqual([
      'stages.0.ratio',
      'stages.1.driverTeeth',
      'stages.1.drivenTeeth',
    ])
    expect(variablePathsOf(newt).slice(0, 2)).toEqual(['stages.0.driverTeeth', 'stages.0.drivenTeeth'])
  })

  it('numbers its candidates through all combinations, each once', () => {
    const plan = planned(stoat, {
      vary: {
        'pack.series': [6, 8, 10],
        'track.sprocketTeeth': { from: 8, to: 12, step: 2 },
        'stages.0.driverTeeth': [14, 17],
      },
      aim,
    })
    const all = Array.from({ length: plan.total }, (_, index) =>
      choicesOf(plan, index)
        .map(({ value }) => value)
        .join(),
    )
    expect(plan.total).toBe(18)
    expect(new Set(all)).toEqual(
      new Set(
        [6, 8, 10].flatMap((series) =>
          [14, 17].flatMap((teeth) => [8, 10, 12].map((sprocket) => [series, teeth, sprocket].join())),
        ),
      ),
    )
  })

  it('reads quantities with their unit, plain numbers in SI', () => {
    const bounds = [
      { figure: 'topSpeedMps', atLeast: '36 km/h', atMost: 20 },
      { figure: 'topMotorRpm', atMost: '30000' },
      { figure: 'toothShearPa', atMost: '2 MPa' },
    ]
    const { holds } = planned(stoat, { vary, aim, hold: { figures: bounds } })
    expect(
      holds.flatMap((hold) => ('bound' in hold ? [[hold.measure.name, hold.type, hold.bound]] : [])),
    ).toEqual([
      ['topSpeedMps', 'atLeast', 10],
      ['topSpeedMps', 'atMost', 20],
      ['topMotorRpm', 'atMost', 30_000],
      ['toothShearPa', 'atMost', 2e6],
    ])
  })

  it('holds each limit by the most particular pattern', () => {
    const margins = {
      'track.tooth-shear': 0.3,
      '*': 0,
      'track.*': 0.1,
      'stage.*.bending': 0.2,
      'stage.1.*': null,
    }
    const { holds } = planned(stoat, { vary, aim, hold: { margins } })
    const least = new Map(
      holds.flatMap((hold) => (hold.type === 'margin' ? [[hold.limit.id, hold.least] as const] : [])),
    )
    expect([least.get('track.tooth-shear'), least.get('track.tension'), least.get('motor.free-rpm')]).toEqual(
      [0.3, 0.1, 0],
    )
    // "stage.*.bending" has more letters of its own than "stage.1.*".
    expect([least.get('stage.1.bending'), least.has('stage.1.shaft'), least.get('stage.2.shaft')]).toEqual([
      0.2,
      false,
      0,
    ])
  })

  it('always asks that the machine gets going', () => {
    const { holds } = planned(stoat, { vary, aim, hold: { margins: { '*': null } } })
    expect(holds).toMatchObject([{ type: 'margin', limit: { id: 'vehicle.start' } }, { type: 'exists' }])
  })
})

describe('seconds to a speed', () => {
  const { evaluation, machine, figures } = check(completeBuild(stoat))

  it('are the figures of check at half of the top speed', () => {
    const top = figures.topSpeedMps ?? NaN
    // 1e-9: the same integral, cut into other pieces.
    expect(
      Math.abs(secondsToSpeed(evaluation, machine, top / 2) / (figures.secondsToHalfTop ?? NaN) - 1),
    ).toBeLessThan(1e-9)
    expect(
      Math.abs(secondsToSpeed(evaluation, machine, 0.8 * top) / (figures.secondsTo80Top ?? NaN) - 1),
    ).toBeLessThan(1e-9)
    expect(secondsToSpeed(evaluation, machine, 0.99 * top)).toBeNaN()
  })

  it('follow the closed form of a first-order approach up to 98 % of the top speed', () => {
    // Without air, current limit and wheel-spin thrust is a straight line in speed: v = v_top (1 − e^(−t/τ)), τ = m_e/s, any
    // text on first-order systems; s is taken from two points of the line, F(0) − R(0) = s v_top.
    const still = withEntry(
      withEntry(stoat, 'vehicle.dragCoefficient', 0),
      'controller.currentLimitAmps',
      undefined,
    )
    const {
      evaluation: e,
      machine: m,
      figures: own,
    } = check(completeBuild(withEntry(withEntry(still, 'ground.gripCoefficient', 3), 'vehicle.massKg', 250)))
    const top = own.topSpeedMps ?? NaN
    const decay =
      ((own.equivalentMassKg ?? NaN) * top) / ((own.startThrustN ?? NaN) - (own.groundResistanceN ?? NaN))
    expect(own.startThrustN).toBeLessThan(own.gripThrustN ?? 0)
    for (const share of [0.1, 0.5, 0.9, 0.97]) {
      // 1e-8: eight nodes a piece near the pole at the top speed.
      expect(Math.abs(secondsToSpeed(e, m, share * top) / (-decay * Math.log(1 - share)) - 1)).toBeLessThan(
        1e-8,
      )
    }
  })
})

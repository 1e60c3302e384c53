import { describe, expect, it } from 'vitest'
import { machineOf } from '../../../shared-engine/machine/machine.ts'
import { completeBuild, readStoredBuildValue } from '../../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import type { LimitRow } from '../../../shared-engine/limits/ledger.ts'
import { worstRow } from '../../../shared-engine/limits/worst.ts'
import { check } from '../../../shared-engine/check.ts'
import { withChoices } from '../../../shared-engine/search/candidate-build.ts'
import { Candidates } from '../../../shared-engine/search/candidates.ts'
import { verdictOf } from '../../../shared-engine/search/verdict.ts'
import { choicesOf, type SearchPlan } from '../../../shared-engine/search/space.ts'
import type { NamedFigure } from '../../../shared-engine/figures/table.ts'
import { figureTable } from '../../../shared-engine/figures/table.ts'
import { demo, planned, searched } from './support.ts'

const stoat = demo('quick-sled-puller')
const newt = demo('culvert-crawler')
const ibex = demo('hut-hauler')
const { motor: fitted } = stoat
const drawer = {
  vary: {
    'stages.0.driverTeeth': [13, 16, 18, 22],
    'stages.1.drivenTeeth': { from: 30, to: 42, step: 4 },
    'track.sprocketTeeth': [8, 9, 11],
    'pack.series': [6, 8, 10],
    'controller.throttleCapPercent': [60, 70, 100],
    motor: [
      { name: 'as fitted', motor: fitted },
      {
        name: 'slow wind',
        motor: { ...fitted, kvRpmPerVolt: 600, resistanceMilliohm: 14, burstAmps: undefined },
      },
    ].map(({ name, motor }) => ({ name, motor: JSON.parse(JSON.stringify(motor)) as object })),
  },
  hold: {
    margins: {
      '*': 0,
      'track.tooth-*': 0.1,
      'track.tooth-*-lasts': null,
      '*-lasts': null,
      'stage.1.flank': null,
      'stage.1.contact-ratio': null,
      'track.lift-off': null,
    },
  },
  aim: { figure: 'topSpeedMps', best: 'most' },
  keep: 15,
}

/** What the drawer leaves open: flanks, pinions of few teeth and a slack loop are past their limits everywhere. */
const unasked: ReadonlySet<string> = new Set(['stage.1.flank', 'stage.1.contact-ratio', 'track.lift-off'])

/** Least margin that the drawer asks of a limit. */
function askedOf({ id, group }: LimitRow): number {
  if (group === 'mishap' || id.endsWith('-lasts') || unasked.has(id)) return -Infinity
  return id.startsWith('track.tooth-') ? 0.1 : 0
}

const buildOf = (plan: SearchPlan, index: number) =>
  completeBuild(withChoices(plan.stored, choicesOf(plan, index)))
const everyCandidate = (plan: SearchPlan) => Array.from({ length: plan.total }, (_, index) => index)

describe('the machine of a candidate', () => {
  it.each([
    ['gear, chain, motors, pack, throttle', stoat, drawer.vary],
    [
      'belt and gear, two motors',
      newt,
      {
        'stages.0.driverTeeth': [14, 18, 20],
        'stages.1.driverTeeth': [17, 18],
        'stages.1.drivenTeeth': [60, 72],
        'track.sprocketTeeth': [20, 24],
      },
    ],
    [
      'a fixed ratio, soil',
      ibex,
      { 'stages.0.ratio': { from: 4, to: 6, step: 0.5 }, 'stages.1.driverTeeth': [15, 17, 19] },
    ],
  ])('is that of its build, in every digit: %s', (_name, stored, vary) => {
    const plan = planned(stored, { vary, aim: drawer.aim })
    const candidates = new Candidates(plan)
    // Forwards, and in leaps, so that parts are kept and changed in every combination.
    for (const index of [
      ...everyCandidate(plan),
      ...everyCandidate(plan).map((at) => (at * 101) % plan.total),
    ]) {
      expect(candidates.set(index)).toBe(-1)
      expect(candidates.machine).toEqual(machineOf(buildOf(plan, index)))
    }
  })

  it('is refused where its build is', () => {
    // A belt at 95 mm between centres: 60 and 72 teeth of 5.08 mm need 106.7 mm.
    const plan = planned(newt, {
      vary: { 'stages.0.driverTeeth': [18, 72], 'stages.1.driverTeeth': [17, 18] },
      aim: drawer.aim,
    })
    const candidates = new Candidates(plan)
    for (const index of everyCandidate(plan)) {
      const valid = readStoredBuildValue(withChoices(newt, choicesOf(plan, index))).ok
      expect(candidates.set(index) < 0).toBe(valid)
    }
    expect(candidates.broken).toMatchObject([
      { mistake: { code: 'between-fields', path: 'stages.0.centreMm' } },
    ])
    expect(searched(plan).unsound).toMatchObject([{ count: 2, mistake: { path: 'stages.0.centreMm' } }])
    expect(verdictOf(searched(plan), 'metric').join(' ')).toContain(
      '2 cannot be built; the first: stages.0.centreMm is 95 mm',
    )
  })
})

describe('rows of a search', () => {
  const plan = planned(stoat, drawer)
  const outcome = searched(plan)

  it('have the figures and the ledger of check', () => {
    expect(outcome.rows.length).toBe(15)
    for (const row of outcome.rows) {
      const { figures, limits } = check(buildOf(plan, row.index))
      // The same code on an equal machine: equal in every digit, which is closer than the 1e-9 asked for.
      expect(row.figures).toEqual(figures)
      expect(row.limits).toEqual(limits)
      expect(row.margin).toBe(worstRow(limits)?.margin)
      expect(row.aims).toEqual([figures.topSpeedMps])
    }
  })

  it('are the best that hold, by a plain scan over check', () => {
    const holding = everyCandidate(plan)
      .map((index) => check(buildOf(plan, index)))
      .filter(({ limits }) => limits.every((row) => (row.margin ?? -Infinity) >= askedOf(row)))
    expect(outcome.holding).toBe(holding.length)
    expect(holding.length).toBeGreaterThan(20)
    const speeds = holding.map(({ figures }) => figures.topSpeedMps ?? 0).sort((one, other) => other - one)
    const members = outcome.rows.flatMap((row) =>
      Array.from({ length: 1 + row.alternatives.count }, () => row.aims[0] ?? 0),
    )
    members.forEach((speed, rank) => expect(Math.abs(speed / (speeds[rank] ?? NaN) - 1)).toBeLessThan(1e-9)) // folded to 1e-9
  })

  it('do not depend on how candidates are dealt out', () => {
    expect(searched(plan, 47)).toEqual(outcome)
    expect(searched(plan, 101, true)).toEqual(outcome)
  })

  it('fold candidates with the same ratio and the same figures', () => {
    // 16·34 = 17·32, and the chain's own figures do not enter check's: the same machine by two pairs.
    const pairs = planned(ibex, {
      vary: { 'stages.1.driverTeeth': [16, 17], 'stages.1.drivenTeeth': [32, 34] },
      aim: { figure: 'ratio', best: 'most' },
    })
    const folded = searched(pairs)
    expect(folded.rows.map((row) => row.alternatives.count)).toEqual([0, 1, 0])
    const [row] = folded.rows.slice(1)
    const teeth = [row?.choices ?? [], ...(row?.alternatives.choices ?? [])].map((choices) =>
      choices.map(({ value }) => value),
    )
    expect(teeth.toSorted((one, other) => (one[0] ?? 0) - (other[0] ?? 0))).toEqual([
      [16, 32],
      [17, 34],
    ])
  })

  it('name at most 20 alternatives and count all', () => {
    const stages = Array.from({ length: 2 }, () => ({
      kind: 'chain',
      driverTeeth: 20,
      drivenTeeth: 40,
      size: '06B',
    }))
    const plain = { ...ibex, stages } as StoredBuild
    const teeth = Array.from({ length: 12 }, (_, at) => 15 + at)
    const same = planned(plain, {
      vary: { 'stages.0.driverTeeth': teeth, 'stages.1.driverTeeth': teeth },
      aim: { figure: 'ratio', best: 'most' },
      keep: 500,
    })
    const outcome = searched(same, 10, true)
    expect(outcome).toEqual(searched(same))
    // a·b = c: as many rows as the products of two of 15 to 26 that get going have values; nothing is lost and nothing counted twice.
    const products = new Set(
      everyCandidate(same)
        .filter((index) => check(buildOf(same, index)).figures.topSpeedMps !== null)
        .map((index) => choicesOf(same, index).reduce((product, { value }) => product * value, 1)),
    )
    expect(products.size).toBeGreaterThan(30)
    expect(outcome.rows.length).toBe(products.size)
    expect(outcome.rows.reduce((sum, row) => sum + 1 + row.alternatives.count, 0)).toBe(outcome.holding)
  })
})

describe('the map', () => {
  it('holds every candidate, and stands for a cell by one that holds', () => {
    const plan = planned(stoat, drawer)
    const { map, sound, holding } = searched(plan)
    const sum = (list: Uint32Array) => list.reduce((total, count) => total + count, 0)
    expect(sum(map.count)).toBe(sound)
    expect(sum(map.holding)).toBe(holding)
    map.cell.forEach((_, at) => {
      expect(map.holds[at]).toBe((map.holding[at] ?? 0) > 0 ? 1 : 0)
      const { figures } = check(buildOf(plan, map.index[at] ?? -1))
      expect(map.x[at]).toBe(figures.ratio)
      expect(map.y[at]).toBe(figures.topSpeedMps)
    })
  })
})

describe('two aims', () => {
  const plan = planned(stoat, {
    ...drawer,
    aim: [
      { figure: 'topSpeedMps', best: 'most' },
      { figure: 'toothShearPa', best: 'least' },
    ],
    keep: 500,
  })

  it('give the front, by brute force over check', () => {
    const holding = everyCandidate(plan)
      .map((index) => check(buildOf(plan, index)))
      .filter(({ limits }) => limits.every((row) => (row.margin ?? -Infinity) >= askedOf(row)))
      .map(({ figures }) => [figures.topSpeedMps ?? 0, figures.toothShearPa ?? 0] as const)
    const beaten = ([speed, shear]: readonly [number, number]) =>
      holding.some(
        ([faster, weaker]) =>
          faster >= speed && weaker <= shear && (faster > speed * (1 + 1e-8) || weaker < shear * (1 - 1e-8)),
      )
    const front = holding.filter((point) => !beaten(point))
    const outcome = searched(plan)
    const rows = outcome.rows.slice(0, outcome.rows.length - outcome.runnersUp)
    const members = rows.reduce((sum, row) => sum + 1 + row.alternatives.count, 0)
    expect(members).toBe(front.length)
    // A short front is followed by the fastest of the rest, so that there is something to choose from.
    const next = outcome.rows.slice(rows.length).map(({ aims }) => aims[0] ?? NaN)
    expect(outcome.rows).toHaveLength(8)
    expect(next).toEqual(next.toSorted((a, b) => b - a))
    const others = holding.filter((point) => beaten(point)).map(([speed]) => speed)
    expect(next[0]).toBeCloseTo(Math.max(...others), 9)
    expect(outcome.front.index.length).toBe(front.length)
    for (const { aims } of rows) expect(beaten([aims[0] ?? 0, aims[1] ?? 0])).toBe(false)
    expect(searched(plan, 9, true)).toEqual(outcome)
  })

  it('spread the rows kept over the whole front', () => {
    const { rows, runnersUp } = searched(plan)
    const all = rows.slice(0, rows.length - runnersUp)
    const few = searched({ ...plan, keep: 3 }).rows
    expect(few).toHaveLength(3)
    expect([few[0], few[2]]).toEqual([all[0], all.at(-1)])
  })
})

describe('a space in which nothing holds', () => {
  const vary = { 'pack.series': [6, 8, 10], 'track.sprocketTeeth': [8, 9, 10, 11] }
  const found = (hold: object) => searched(planned(stoat, { vary, hold, aim: drawer.aim }), 5)

  it('says which one fails for all, and by how much at best', () => {
    const outcome = found({ margins: { 'motor.free-rpm': 0.99 } })
    const margins = everyCandidate(planned(stoat, { vary, aim: drawer.aim })).map(
      (index) =>
        check(buildOf(planned(stoat, { vary, aim: drawer.aim }), index)).limits.find(
          ({ id }) => id === 'motor.free-rpm',
        )?.margin ?? 0,
    )
    const [report] = outcome.holds
    expect(outcome.holding).toBe(0)
    expect(report).toMatchObject({ breaking: 12, breakingAlone: 12, best: Math.max(...margins) })
    expect(report?.bestChoices.map(({ value }) => value)).toEqual([6, 8])
    const lines = verdictOf(outcome, 'metric')
    expect(lines[0]).toBe('None of 12 candidates holds everything asked for.')
    expect(lines[1]).toMatch(
      /^No candidate holds: Motor rpm, running free at full charge with 99\.0\s%? ?in hand; the best has/,
    )
  })

  it('counts one as one', () => {
    const [one] = [{ 'pack.series': [10] }]
    const asked = (margin: number, vary: object = one) =>
      verdictOf(
        searched(
          planned(stoat, { vary, hold: { margins: { 'motor.free-rpm': margin } }, aim: drawer.aim }),
          5,
        ),
        'metric',
      )[0]
    expect(asked(0.99)).toBe('The only candidate does not hold everything asked for.')
    expect(asked(-9)).toBe('The only candidate holds everything asked for.')
    expect(asked(-9, { 'pack.series': [9, 10] })).toBe('2 of 2 candidates hold everything asked for.')
  })

  it('says which two are never held together', () => {
    const speeds = everyCandidate(planned(stoat, { vary, aim: drawer.aim })).map(
      (index) => check(buildOf(planned(stoat, { vary, aim: drawer.aim }), index)).figures,
    )
    const fastest = Math.max(...speeds.map((figures) => figures.topSpeedMps ?? 0))
    const leastVolts = Math.min(...speeds.map((figures) => figures.packOpenVolts ?? Infinity))
    const outcome = found({
      figures: [
        { figure: 'topSpeedMps', atLeast: fastest },
        { figure: 'packOpenVolts', atMost: leastVolts },
      ],
    })
    expect(outcome.neverTogether.map((pair) => pair.map((hold) => hold.type))).toEqual([
      ['atLeast', 'atMost'],
    ])
    expect(verdictOf(outcome, 'metric')[1]).toMatch(
      /^Held singly, never together: Top speed of at least .*; Pack volts at rest of at most/,
    )
    expect(outcome.closest).not.toBeNull()
  })

  it('counts a machine that does not get going as none', () => {
    const heavy = { ...stoat, vehicle: { ...stoat.vehicle, towForceN: 90_000 } }
    const outcome = searched(planned(heavy, { vary, aim: { figure: 'ratio', best: 'least' } }))
    expect(outcome.holding).toBe(0)
    expect(verdictOf(outcome, 'metric')[1]).toContain('getting going at all')
  })
})

it('every figure of the table can be aimed for', () => {
  const names = figureTable.map((figure: NamedFigure) => figure.name)
  for (const figure of [...names, 'worstMargin']) {
    const plan = planned(newt, { vary: { 'track.sprocketTeeth': [22, 24] }, aim: { figure, best: 'most' } })
    const [row] = searched(plan).rows
    const exists = row !== undefined
    const values = [0, 1].map((index) => check(buildOf(plan, index)))
    const told = values.map(({ figures, limits }) =>
      figure === 'worstMargin' ? (worstRow(limits)?.margin ?? null) : figures[figure as keyof typeof figures],
    )
    expect(exists).toBe(told.some((value) => value !== null))
    if (exists) expect(row.aims[0]).toBe(Math.max(...told.filter((value) => value !== null)))
  }
})

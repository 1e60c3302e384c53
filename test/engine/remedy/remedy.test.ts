import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { completeBuild, readBuildText, readBuildValue } from '../../../shared-engine/entries/read.ts'
import type { Build, StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { worstRow } from '../../../shared-engine/limits/worst.ts'
import { check, type Checked } from '../../../shared-engine/check.ts'
import { shownEntry } from '../../../shared-engine/entries/entry-reader.ts'
import type { LimitId } from '../../../shared-engine/limits/id.ts'
import { leversOf } from '../../../shared-engine/remedy/levers.ts'
import { withChanges } from '../../../shared-engine/remedy/margin.ts'
import { leastChange } from '../../../shared-engine/remedy/solve.ts'
import { remediesFor, type Remedy } from '../../../shared-engine/remedy/remedy.ts'
import { plainBuild } from '../../fixtures/build/plain.ts'
import { wholeBuild } from '../../fixtures/build/whole.ts'

function buildOf(stored: unknown): Build {
  const read = readBuildValue(stored)
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  return read.value
}

/** Demo data: teeth that share by percent, so that shear is K_A F_e/([1 + q(z_e − 1)] w t), a plain product. */
function toothBuild(changes: Partial<StoredBuild['track']> = {}): Build {
  const plain = plainBuild()
  return buildOf({
    ...plain,
    controller: { currentLimitAmps: 60, resistanceMilliohm: 2 },
    stages: [{ kind: 'fixed', ratio: 20 }],
    track: {
      ...plain.track,
      knockdownPercent: 20,
      tooth: { heightMm: 8, rootMm: 9, widthMm: 20, material: 'tpu-85a-printed' },
      ...changes,
    },
  })
}

const found = (remedies: readonly Remedy[], path: string): Remedy => {
  const remedy = remedies.find((one) => one.path === path)
  if (remedy === undefined) throw new Error(`no remedy ${path}`)
  return remedy
}

describe('the least change', () => {
  const span = { from: 10, to: 100, step: 0.1 }

  test('is the root, rounded away from today', () => {
    // 1 − 20/x = 0.75 at x = 80; 1 − 20/x = 0.21 at 25.316…, so 25.4.
    expect(leastChange((x) => 1 - 20 / x, 0.75, span)).toEqual({ value: 80, measure: 0.75, reached: true })
    expect(leastChange((x) => 1 - 20 / x, 0.21, span)?.value).toBe(25.4)
    // Down: 1 − x/50 = 0.9 at 5; rounding goes below.
    expect(leastChange((x) => 1 - x / 50, 0.903, { from: 10, to: 1, step: 0.1 })?.value).toBe(4.8)
  })

  test('is the first whole number for counts', () => {
    const asked: number[] = []
    const measure = (x: number) => (asked.push(x), 1 - 20 / x)
    expect(leastChange(measure, 0.21, { ...span, to: 1000, step: 1, whole: true })?.value).toBe(26)
    expect(asked.every(Number.isInteger)).toBe(true)
    // Halving, not scanning.
    expect(asked.length).toBeLessThan(40)
  })

  test('says how far it gets where it is not enough, at an end or at a peak', () => {
    expect(leastChange((x) => 1 - 20 / x, 0.9, span)).toEqual({ value: 100, measure: 0.8, reached: false })
    const peak = leastChange((x) => 0.1 - ((x - 42) / 100) ** 2, 0.2, span)
    // 0.1: the size that can be had next to the peak at 42.
    expect(Math.abs((peak?.value ?? NaN) - 42)).toBeLessThanOrEqual(0.1)
    expect(peak?.reached).toBe(false)
  })

  test('of a number of more digits than are sold is itself or further, and never nothing', () => {
    // 12 digits and steps of 0.1: the sizes next to it are the same in ten digits.
    const many = leastChange((x) => -1 - (x - 5_000_000.07) ** 2, 0.2, {
      from: 5_000_000.04,
      to: 5_000_000.1,
      step: 0.1,
    })
    expect(many?.reached).toBe(false)
  })

  test('ends where the number makes no build, and crosses where margins cannot be formed', () => {
    expect(leastChange((x) => (x > 50 ? NaN : 1 - 100 / x), 0.2, span)?.reached).toBe(false)
    expect(leastChange((x) => (x < 60 ? -Infinity : 0.5), 0.2, span)?.value).toBe(60)
    expect(leastChange(() => NaN, 0.2, span)).toBeNull()
  })
})

describe('what would hold a tooth’s shear', () => {
  const build = toothBuild()
  const result = remediesFor(build, 'track.tooth-shear')
  const { toothShearPa } = check(build).figures
  const row = check(build).limits.find(({ id }) => id === 'track.tooth-shear')
  const needed = (toothShearPa ?? NaN) / (0.8 * (row?.allowed ?? NaN))

  test('is what the formula says: width and root in proportion to the stress', () => {
    expect(needed).toBeGreaterThan(1)
    const upwards = (value: number) => Math.ceil(value * 10 - 1e-6) / 10
    expect(found(result.remedies, 'track.tooth.widthMm').to).toBe(upwards(20 * needed))
    expect(found(result.remedies, 'track.tooth.rootMm').to).toBe(upwards(9 * needed))
  })

  test('current limit: torque is K_t (I − I_nl), so I = I_nl + (60 − I_nl)/needed, rounded down', () => {
    expect(found(result.remedies, 'controller.currentLimitAmps').to).toBe(Math.floor(1.5 + 58.5 / needed))
  })

  test('engaged teeth: with a share of 50 % one more carries half as much again', () => {
    // z_e = 6 of 12 teeth at 180°: [1 + 0.5 · 5] = 3.5; needed rows r give 1 + 0.5 (z − 1) ≥ 3.5 · needed.
    const teeth = Math.ceil((3.5 * needed - 1) / 0.5 + 1 - 1e-9)
    const wrap = found(result.remedies, 'track.wrapDegrees')
    expect(teeth).toBeGreaterThan(6)
    if (teeth <= 7) expect(wrap.to).toBe(teeth * 30)
    else expect(wrap).toMatchObject({ to: 220, reached: false })
  })

  test('material: a stronger one of the table, the least too strong first', () => {
    const material = found(result.remedies, 'track.tooth.material')
    expect(material.reached).toBe(true)
    for (const value of material.alternatives) {
      const other = check(withChanges(build, [{ path: 'track.tooth.material', value }]))
      const margin = other.limits.find(({ id }) => id === 'track.tooth-shear')?.margin ?? NaN
      expect(margin).toBeGreaterThanOrEqual(material.margin ?? NaN)
    }
  })

  test('an own material gives way to one of the table, its strengths with it', () => {
    const own = { shearStrengthMpa: 9, tensileStrengthMpa: 4, bearingStrengthMpa: 5 }
    const tooth = { heightMm: 8, rootMm: 9, widthMm: 4, material: 'custom' as const, ...own }
    const remedy = found(
      remediesFor(toothBuild({ tooth }), 'track.tooth-shear').remedies,
      'track.tooth.material',
    )
    expect(remedy.apply.filter(({ value }) => value === null)).toHaveLength(3)
    expect(remedy.reached).toBe(true)
  })

  test('the factor for shock is kept: it changes no part', () => {
    expect(result.remedies.some(({ path }) => path === 'service.factor')).toBe(false)
  })

  test('those that reach it stand first, least change first', () => {
    const order = result.remedies.map(({ reached }) => reached)
    expect(order).toEqual([...order].sort((one, other) => Number(other) - Number(one)))
    const shares = result.remedies.filter((one) => one.reached).map((one) => one.relativeChange ?? 1)
    expect(shares).toEqual([...shares].sort((one, other) => one - other))
  })
})

/** Modules of ISO 54, first series, and the small ones between 0.5 and 1 that stock gears come in. */
const modules = [0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10]

/** Least and most of what is on sale or can be cut, by the entry; *common practice, no source*. */
const onSale: readonly (readonly [path: RegExp, least: number, most: number])[] = [
  [/^stages\.\d\.driverTeeth$/, 9, 40],
  [/^stages\.\d\.drivenTeeth$/, 12, 120],
  [/^track\.sprocketTeeth$/, 6, 40],
  [/^track\.teethAcross$/, 1, 4],
  [/^track\.wrapDegrees$/, 90, 220],
  [/^controller\.throttleCapPercent$/, 25, 100],
  [/^stages\.\d\.(driver|driven)Shift$/, -0.3, 0.6],
  [/^pack\.series$/, 2, 60],
]

/** How many times the part that is there a new one may be; else eight. */
const timesThePart: readonly (readonly [path: RegExp, times: number])[] = [
  [/^pack\.series$|haftDiameterMm$|^track\.shaft\.diameterMm$|^track\.tooth\.(root|height)Mm$/, 2],
  [
    /Teeth$|^motor\.kv|^stages\.\d\.(moduleMm|faceWidthMm|widthMm|ratio)$|^track\.tooth\.widthMm$|breakingTension/,
    3,
  ],
  [/^vehicle\.(contactLength|gauge|cg|loadCg|skiDistance)/, 1.5],
]

/** Why nobody could buy, cut or set what a remedy says; null where they can. */
function notToBeHad({ path, from, to }: Remedy, build: Build): string | null {
  if (typeof to !== 'number') return null
  const [, least, most] = onSale.find(([pattern]) => pattern.test(path)) ?? ['', -Infinity, Infinity]
  const start = typeof from === 'number' ? from : to
  // a part beyond what is sold may move towards it
  if (to < Math.min(least, start) || to > Math.max(most, start)) return `${path}: ${to} is not sold`
  const times = timesThePart.find(([pattern]) => pattern.test(path))?.[1] ?? 8
  if (start > 0 && Math.abs(Math.log(to / start)) > Math.log(times) + 1e-9)
    return `${path}: ${to} is more than ${times} times off ${start}`
  if (path.endsWith('.moduleMm') && !modules.includes(to)) return `${path}: no cutter of module ${to}`
  if (path === 'track.tooth.rootMm' && to > Math.max(start, 0.65 * build.track.pitchMm))
    return `${path}: no room for the sprocket’s tooth`
  return null
}

/** What a remedy says that is not so of the build which it makes; null where all is. */
function falseWords(remedy: Remedy, limit: LimitId, build: Build, before: Checked): string | null {
  const { path, from, to, apply, margin, reached, cleared, newlyOver } = remedy
  const again = readBuildValue(withChanges(build, apply))
  if (!again.ok) return `${path}: ${JSON.stringify(again.mistakes)}`
  const after = check(again.value)
  const standings = (checked: Checked) => new Map(checked.limits.map((row) => [row.id, row.standing]))
  const [were, are] = [standings(before), standings(after)]
  const now = after.limits.find(({ id }) => id === limit)?.margin ?? null
  const wrong = [
    now === margin ? '' : `margin ${String(now)}`,
    reached === (now !== null && now >= 0.2) ? '' : 'reached',
    remedy.topSpeedAfter === after.figures.topSpeedMps ? '' : 'top speed',
    cleared.every((id) => were.get(id) === 'over' && ['near', 'within'].includes(are.get(id) ?? ''))
      ? ''
      : 'cleared',
    newlyOver.every((id) => were.get(id) !== 'over' && are.get(id) === 'over') ? '' : 'newly over',
    // "1.5 mm to 2.1 mm": what a person reads is what the remedy was worked out with.
    typeof to !== 'number' || shownEntry(path, to).startsWith(shownNumber(to))
      ? ''
      : `shown ${shownEntry(path, to)}`,
    isOfSteps(path, to, build) ? '' : 'not of steps',
  ].filter((one) => one !== '')
  return wrong.length === 0
    ? null
    : `${limit}, ${path}, ${String(from)} to ${String(to)}: ${wrong.join(', ')}`
}

const shownNumber = (value: number) => String(Number(value.toPrecision(10)))

/** Whether a number is one that is sold: of whole steps, or a size of the list. */
function isOfSteps(path: string, to: number | string, build: Build): boolean {
  const lever = leversOf(build).find((one) => one.path === path)
  if (lever === undefined || typeof to !== 'number' || lever.sizes !== undefined) return lever !== undefined
  const steps = to / (lever.step ?? 1)
  return Math.abs(steps - Math.round(steps)) < 1e-6
}

describe('what a remedy asks for can be bought, cut or set', () => {
  test.each([
    ['stages.0.driverTeeth', 60, 486],
    ['pack.series', 6, 1],
    ['stages.0.moduleMm', 1, 1.15],
    ['stages.0.drivenTeeth', 56, 448],
  ])('%s from %d to %d cannot', (path, from, to) => {
    expect(notToBeHad({ path, from, to } as Remedy, toothBuild())).not.toBeNull()
  })

  const hunted = process.env['PITCHLINE_REMEDIES']
  const runs = Number(hunted ?? 20)
  // All limits of a build that are passed where somebody hunts; else the worst of all or another, to be done in seconds.
  test(`on ${runs} random builds, what is passed in them`, () => {
    let seen = 0
    fc.assert(
      fc.property(wholeBuild, fc.nat(), (stored, pick) => {
        const build = completeBuild(stored)
        const before = check(build)
        const over = before.limits.filter(({ standing }) => standing === 'over')
        const one = over[over.length === 0 ? 0 : pick % over.length]
        const asked = hunted !== undefined ? over : [pick % 2 === 0 ? worstRow(before.limits) : one]
        for (const id of new Set(asked.flatMap((row) => row?.id ?? []))) {
          const { remedies } = remediesFor(build, id)
          seen += remedies.length
          expect(remedies.flatMap((remedy) => notToBeHad(remedy, build) ?? [])).toEqual([])
          expect(remedies.flatMap((remedy) => falseWords(remedy, id, build, before) ?? [])).toEqual([])
        }
      }),
      { numRuns: runs, endOnFailure: true },
    )
    expect(seen).toBeGreaterThan(runs)
  })

  test.each(['culvert-crawler', 'hut-hauler', 'quick-sled-puller'])(
    '%s, each limit with less than the target in hand',
    (name) => {
      const file = new URL(`../../../examples/${name}.build.json`, import.meta.url)
      const read = readBuildText(readFileSync(file, 'utf8'))
      if (!read.ok) throw new Error(name)
      const short = check(read.value).limits.filter(({ margin }) => margin === null || margin < 0.2)
      const judged = short.map(({ id }) => id).filter((_, at) => at % 5 === 0)
      for (const id of judged)
        expect(
          remediesFor(read.value, id).remedies.flatMap((remedy) => notToBeHad(remedy, read.value) ?? []),
        ).toEqual([])
    },
  )

  test('a machine without a torque limiter is offered one, which holds in a jam', () => {
    const file = new URL('../../../examples/quick-sled-puller.build.json', import.meta.url)
    const read = readBuildText(readFileSync(file, 'utf8'))
    if (!read.ok) throw new Error('no demo')
    const limiter = found(remediesFor(read.value, 'track.stop-tension').remedies, 'stages.1.slipTorqueNm')
    expect(limiter).toMatchObject({ from: null, reached: true })
    const { limits } = check(withChanges(read.value, limiter.apply))
    expect(limits.find(({ id }) => id === 'track.stop-tension')?.margin).toBeGreaterThanOrEqual(0.2)
  })

  test('a limiter is offered within what can be entered, however hard the jam', () => {
    const file = new URL('../../../examples/quick-sled-puller.build.json', import.meta.url)
    const read = readBuildText(readFileSync(file, 'utf8'))
    if (!read.ok) throw new Error('no demo')
    const { motor, track } = read.value
    const hard = buildOf({
      ...read.value,
      motor: { ...motor, rotorInertiaGcm2: 1_000_000 },
      track: {
        ...track,
        pitchMm: 500,
        sprocketTeeth: 200,
        loopPitches: 1000,
        pitchErrorMm: 0,
        loopStiffnessN: 1e9,
        tooth: { ...track.tooth, heightMm: 200, loadHeightMm: 100, rootMm: 200, widthMm: 200 },
      },
    })
    const { remedies } = remediesFor(hard, 'track.stop-tension')
    const limiters = remedies.filter(({ path }) => path.endsWith('slipTorqueNm'))
    expect(limiters).not.toEqual([])
    expect(limiters.filter(({ to }) => !(Number(to) <= 1e6))).toEqual([])
  })

  test('a motor that turns too fast is offered one of fewer rpm a volt', () => {
    const fast = buildOf({ ...plainBuild(), motor: { ...plainBuild().motor, ratedMaxRpm: 10_000 } })
    const remedy = found(remediesFor(fast, 'motor.free-rpm').remedies, 'motor.kvRpmPerVolt')
    expect(remedy.reached).toBe(true)
    expect(remedy.to).toBeLessThan(500)
  })
})

describe('over the golden builds', () => {
  const folder = new URL('../../golden/', import.meta.url)
  const files = readdirSync(folder).filter((name) => name.endsWith('.build.json'))

  test.each(files.slice(0, 8))('%s: every remedy is a valid build and does what it says', (file) => {
    const read = readBuildText(readFileSync(new URL(file, folder), 'utf8'))
    if (!read.ok) throw new Error(file)
    const result = remediesFor(read.value)
    const before = check(read.value)
    expect(result.limit).toBe(worstRow(before.limits)?.id)
    expect(result.holds || result.remedies.length > 0).toBe(true)
    for (const remedy of result.remedies) {
      const again = readBuildValue(withChanges(read.value, remedy.apply))
      if (!again.ok) throw new Error(`${remedy.path}: ${JSON.stringify(again.mistakes)}`)
      const after = check(again.value)
      const row = after.limits.find(({ id }) => id === result.limit)
      expect(row?.margin ?? null).toBe(remedy.margin)
      expect(remedy.reached).toBe((row?.margin ?? -1) >= 0.2)
      expect(remedy.topSpeedAfter).toBe(after.figures.topSpeedMps)
      // What stands still is no remedy.
      if (remedy.topSpeedBefore !== null) expect(remedy.topSpeedAfter, remedy.path).not.toBeNull()
      expect(notToBeHad(remedy, read.value)).toBeNull()
      for (const id of remedy.newlyOver) {
        expect(after.limits.find((one) => one.id === id)?.standing).toBe('over')
        expect(before.limits.find((one) => one.id === id)?.standing).not.toBe('over')
      }
    }
  })
})

test('a limit that is at its target needs nothing, one that is not there has nothing', () => {
  const build = toothBuild({ tooth: { heightMm: 8, rootMm: 9, widthMm: 200, material: 'steel-c45' } })
  expect(remediesFor(build, 'track.tooth-shear')).toMatchObject({ holds: true, remedies: [] })
  expect(remediesFor(build, 'track.burst-speed')).toMatchObject({
    holds: false,
    marginNow: null,
    remedies: [],
  })
})

test('an empty current limit starts from the current without one, and is offered', () => {
  const plain = plainBuild()
  // On grip and mass that let the motors have all that they can draw.
  const build = buildOf({
    ...plain,
    motor: { ...plain.motor, burstAmps: 201 },
    vehicle: { massKg: 30 },
    ground: { model: 'coefficient', rollingCoefficient: 0.02, gripCoefficient: 3 },
  })
  const limit = found(remediesFor(build, 'motor.current-burst').remedies, 'controller.currentLimitAmps')
  // 20 % below the 201 A that the motor stands: 160.8 A, rounded down.
  expect(limit).toMatchObject({ from: null, to: 160, reached: true })
})

describe('what can be bought or cut', () => {
  test('a slower motor of the same size is wound with more turns: resistance and free-run current go with Kv', () => {
    const build = toothBuild()
    const { motor } = build
    const fast = buildOf({
      ...build,
      motor: { ...motor, ratedMaxRpm: motor.ratedMaxRpm / 1.5 },
    } as StoredBuild)
    const remedy = found(remediesFor(fast, 'motor.free-rpm').remedies, 'motor.kvRpmPerVolt')
    const changed = new Map(remedy.apply.map(({ path, value }) => [path, Number(value)]))
    const share = (changed.get('motor.kvRpmPerVolt') ?? NaN) / motor.kvRpmPerVolt
    expect(share).toBeLessThan(1)
    // Turns N = N_0/share: N times the length of a wire of 1/N of the area.
    expect(changed.get('motor.resistanceMilliohm')).toBeCloseTo(motor.resistanceMilliohm / share ** 2, -1)
    expect((changed.get('motor.noLoadAmps') ?? NaN) / (motor.noLoadAmps * share)).toBeCloseTo(1, 2)
    expect(remedy.reached).toBe(true)
  })
})

import { describe, expect, it } from 'vitest'
import { alarmsOf } from '../../../shared-engine/alarms/alarms.ts'
import { alarmWords } from '../../../shared-engine/alarms/words.ts'
import { check, type Checked } from '../../../shared-engine/check.ts'
import { withEntry } from '../../../shared-engine/entries/edit.ts'
import { completeBuild } from '../../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { consequenceOf } from '../../../shared-engine/explain/consequences.ts'
import { mishapsOf, mishapSentence } from '../../../shared-engine/explain/mishaps.ts'
import type { LimitRow } from '../../../shared-engine/limits/ledger.ts'
import { lightSnowBuild } from '../../fixtures/build/light-snow.ts'
import { planned, searched } from '../search/support.ts'

// What an engineer worked out with pencil and paper on a light, strong machine for snow: each sum stands here in plain
// numbers, from the build's entries and from books, not from the program's functions.

const build = lightSnowBuild()
const checkedOf = (stored: StoredBuild) => check(completeBuild(stored))
const checked = checkedOf(build)
const { figures } = checked

function rowOf(of: Checked, id: string): LimitRow {
  const row = of.limits.find((one) => one.id === id)
  if (row === undefined) throw new Error(`no ${id}`)
  return row
}

/** 12 teeth of 20 mm: r = 12 · 20/2π mm. Two motor turns out of six to one tooth round: 0.04 m a turn. */
const radius = (12 * 0.02) / (2 * Math.PI)
const metresPerTurn = (12 * 0.02) / 6
const weight = 12 * 9.80665

describe('a jam at speed', () => {
  // Pull at rest: 60/(2π · 1000) N·m/A times 150 A less the free-run current, times 6, over r: 222 N.
  const pull = ((60 / (2 * Math.PI * 1000)) * (150 - 3.5 / 2) * 6) / radius
  // Rotor 1e-5 kg·m² seen at the belt: J G²/r² = 0.247 kg.
  const mass = (1e-5 * 6 ** 2) / radius ** 2
  // A row: E w/[4 (h/t)³ + 2.4 · 1.5 h/t], 4 MPa, 30 mm wide, h 4 mm on t 10 mm: a short cantilever in bending and shear.
  const row = (4e6 * 0.03) / (4 * 0.4 ** 3 + 2.4 * 1.5 * 0.4)
  // Six rows on half of twelve teeth, 20 mm of loop (60 kN) between them: springs in series and parallel.
  const rows = [1, 2, 3, 4, 5].reduce((whole) => row + 1 / (0.02 / 60_000 + 1 / whole), row)
  // Free loop on one side: (1.2 m − r π)/2.
  const span = (1.2 - radius * Math.PI) / 2
  const stiffness = 1 / (1 / rows + span / 60_000)
  const speed = figures.topBeltSpeedMps ?? NaN
  // Energy of the rotor into the stretch of loop and teeth, the pull at rest on top; what the slack side gives back is
  // under 1 % here: N_0 is 60 N.
  const force = pull + Math.sqrt(pull ** 2 + stiffness * mass * speed ** 2)

  it('puts 3 to 4 kN on the teeth, as energy says', () => {
    expect(force).toBeGreaterThan(3000)
    expect(force).toBeLessThan(4000)
    // 2 %: the magnets' warmth, Poisson's ratio of rubber taken as ½, the slack side
    expect(Math.abs((figures.jamForceN ?? NaN) / force - 1)).toBeLessThan(0.02)
  })

  it('is not what ordinary use says of the same teeth', () => {
    expect(rowOf(checked, 'track.tooth-shear').margin).toBeGreaterThan(0.68)
    const launch = (figures.launchSprocketTorqueNm ?? NaN) / radius
    expect(figures.jamForceN).toBeGreaterThan(12 * launch)
    expect(rowOf(checked, 'track.stop-tension').standing).toBe('over')
  })

  it('is told as a speed, what breaks, and the limiter that would hold', () => {
    const said = mishapsOf(checked).map((one) => mishapSentence(one, 'metric'))
    expect(said).toContainEqual(
      expect.stringMatching(
        /^A jam above \d+\.\d.km\/h breaks the loop; a limiter set at \d+\.\d.N·m at the sprocket would hold\.$/,
      ),
    )
  })
})

describe('a loop on a screw', () => {
  it('leaves its wheels at 25 km/h: √(60 N / 1.2 kg/m) = 7.07 m/s', () => {
    expect((figures.liftOffBeltSpeedMps ?? NaN) * 3.6).toBeCloseTo(25.456, 2)
    expect(rowOf(checked, 'track.lift-off').standing).toBe('over')
    expect(consequenceOf('track.lift-off')).toMatch(/leaves its wheels/)
  })

  it('does not on a spring, which keeps the slack side pulled', () => {
    const sprung = checkedOf(withEntry(build, 'track.tensioner', 'sprung'))
    expect(sprung.limits.some(({ id }) => id.startsWith('track.lift-off'))).toBe(false)
  })
})

describe('a machine that goes over backwards', () => {
  // Moments about the rear edge: (W 0.14 m − 20 N 0.25 m)/0.16 m, the tow and rolling 0.06 W on top: 98.8 N.
  const lifts = (weight * 0.14 - 20 * 0.25) / 0.16 + 20 + 0.06 * weight
  // What the tracks hold once all weight is on them: 0.9 W = 105.9 N; with the skis carrying 30 % it was 74.1 N, and
  // the tracks would seem to spin first.
  const holds = 0.9 * weight

  it('comes up before its tracks spin', () => {
    expect(0.7 * holds).toBeLessThan(lifts)
    expect(holds).toBeGreaterThan(lifts)
    const row = rowOf(checked, 'vehicle.front-lift')
    expect(row.actual).toBeCloseTo(holds, 6)
    expect(row.allowed).toBeCloseTo(lifts, 6)
    expect(row.standing).toBe('over')
    expect(consequenceOf('vehicle.front-lift')).toMatch(/over backwards/)
  })

  it('stays down with the hitch at the ground', () => {
    const low = rowOf(checkedOf(withEntry(build, 'vehicle.towHeightMm', 0)), 'vehicle.front-lift')
    expect(low.allowed).toBeCloseTo(lifts + (20 * 0.25) / 0.16, 6)
    expect(low.standing).not.toBe('over')
  })
})

describe('the alarm card', () => {
  const rpmOf = (of: Checked) => alarmsOf(of).find(({ id }) => id === 'rpm')
  // √(1203 N / 1.2 kg/m) = 31.66 m/s, 0.04 m a turn: 47,494 rpm; 95 % of the rated 60,000 would be 57,000.
  const burst = (Math.sqrt(1203 / 1.2) / metresPerTurn) * 60

  it('knows the rpm at which the loop bursts', () => {
    expect(burst).toBeCloseTo(47_494, -1)
    expect(Math.abs((figures.burstMotorRpm ?? NaN) / burst - 1)).toBeLessThan(1e-9)
  })

  it('is below it, and below where the loop leaves its wheels', () => {
    const fixed = rpmOf(checked)
    // 95 % of 7.071 m/s
    expect(fixed?.value).toBeCloseTo((0.95 * Math.sqrt(60 / 1.2) * 60) / metresPerTurn, 3)
    if (fixed !== undefined)
      expect(alarmWords(fixed, [fixed], 'metric')?.from).toBe('95\u202F% of where the loop leaves its wheels')
    const sprung = rpmOf(checkedOf(withEntry(build, 'track.tensioner', 'sprung')))
    // 60 N of the strength are the spring's already; 90 %
    expect(sprung?.value).toBeCloseTo((0.9 * Math.sqrt((1203 - 60) / 1.2) * 60) / metresPerTurn, 3)
    expect(sprung?.value).toBeLessThan(0.95 * burst)
  })
})

describe('a chain at an eighth of its strength and a lug at a sixth', () => {
  const chainStrength = 3500 // ISO 606, 04C, minimum tensile strength, N
  const lugStrength = 20e6 // of the compound, Pa
  /** Shock raised until the chain stands at an eighth, lugs thinned until they stand at a sixth in bending. */
  const small = withEntry(withEntry(build, 'track.tooth.rootMm', 6), 'track.tooth.widthMm', 5)
  const chainShare = (rowOf(checkedOf(small), 'stage.2.tension').actual ?? NaN) / chainStrength
  const shaken = withEntry(small, 'service.factor', (1.5 * (1 / 8)) / chainShare)
  const loaded = [...Array(40).keys()].reduce((stored) => {
    const share = (rowOf(checkedOf(stored), 'track.tooth-bending-lasts').actual ?? NaN) / lugStrength
    return withEntry(
      stored,
      'track.tooth.widthMm',
      (stored.track.tooth?.widthMm ?? NaN) * Math.sqrt(share * 6),
    )
  }, shaken)
  const lasting = checkedOf(loaded)
  const [chain, lug] = ['stage.2.tension', 'track.tooth-bending-lasts'].map((id) => rowOf(lasting, id))

  it('stand there', () => {
    expect((chain?.actual ?? NaN) / chainStrength).toBeCloseTo(1 / 8, 6)
    expect((lug?.actual ?? NaN) / lugStrength).toBeCloseTo(1 / 6, 6)
  })

  it('rank as a builder means it: rubber does not last at a sixth, the chain just does', () => {
    const ids = lasting.limits.filter(({ group }) => group === 'lasts').map(({ id }) => id)
    expect(ids.indexOf('track.tooth-bending-lasts')).toBeLessThan(ids.indexOf('stage.2.tension'))
    // 1 − 8/8 and 1 − (20/6)/1.2: a sixth of 20 MPa against the 1.2 MPa that rubber bears for long
    expect(chain?.margin).toBeCloseTo(0, 6)
    expect(lug?.margin).toBeCloseTo(1 - 20 / 6 / 1.2, 5)
  })
})

describe('a drawer of pinions with 10 to 15 teeth', () => {
  const vary = {
    'stages.0.driverTeeth': { from: 10, to: 15, step: 1 },
    'stages.0.drivenTeeth': { from: 36, to: 64, step: 4 },
    'stages.1.driverTeeth': { from: 12, to: 19, step: 1 },
    'stages.1.drivenTeeth': { from: 20, to: 28, step: 2 },
  }
  // The gears' own strength alone: what else is over on this machine no pinion changes.
  const hold = {
    margins: { '*': null, 'stage.1.bending': 0, 'stage.1.bending-lasts': 0, 'stage.1.contact-ratio': 0 },
  }
  const outcome = searched(
    planned(build, { vary, hold, aim: { figure: 'topSpeedMps', best: 'most' }, keep: 5 }),
  )

  it('yields gears: of 1,920 combinations most hold, undercut or not', () => {
    expect(6 * 8 * 8 * 5).toBe(1920)
    expect(outcome.looked).toBe(1920)
    expect(outcome.holding).toBeGreaterThan(960)
  })

  it('says what undercut costs, and the shift that cures it', () => {
    // 14 teeth at 20°: x = 1 − 14 sin² 20°/2 = 0.181
    const note = checked.notes.find((text) => text.startsWith('The driver of stage 1 has 14 teeth'))
    expect(note).toMatch(/A profile shift of 0\.1[89]\d* clears it/)
    expect(checked.limits.some(({ id }) => id.includes('interference'))).toBe(false)
  })
})

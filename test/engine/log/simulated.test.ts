import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { buildFrom, logFolder, resultOfText } from './reading.ts'
import { inventedStretches, loggedCsv, simulatedRun, type Stretch } from './simulated-run.ts'

// What a log says against what happened, over invented runs of four machines with coefficient ground, each with ice,
// jumps, slopes and stops; half with a throttle, and of those without a loss a third with no amps either. A log of something that did not happen is worse
// than a silent one: no false alarm is allowed; of what happened most has to be found.

const builds = ['02', '04', '07'].map((number) => buildFrom(path.join(logFolder, `${number}.build.json`)))
builds.push(buildFrom(path.join(logFolder, '../../../examples/culvert-crawler.build.json')))
const runsOfEach = Number(process.env['PITCHLINE_RUNS'] ?? 12)
const sensorsOf = (seed: number) => ({ amps: true, throttle: seed % 2 === 0 })
const fewerOf = (seed: number) => ({ amps: seed % 3 !== 1, throttle: seed % 2 === 0 })

/** The invented drive, then firm ground under power for the load to go from, and time after it. */
const withEnd = (seed: number): readonly Stretch[] => [
  ...inventedStretches(seed),
  { seconds: 14, throttle: 0.6 + 0.03 * (seed % 10) },
]

const secondsOf = (stretches: readonly Stretch[]) => stretches.reduce((sum, { seconds }) => sum + seconds, 0)

describe.each(builds)('logs of $name', (build) => {
  it('a log without a loss never tells of one; one without a standstill never of a jam', () => {
    const told: string[] = []
    for (let seed = 1; seed <= runsOfEach; seed += 1) {
      const run = simulatedRun(build, withEnd(seed), seed % 3 === 0 ? 10 : 5)
      const { episodes } = resultOfText(loggedCsv(run, seed, fewerOf(seed)), {}, build)
      const fastest = Math.max(...run.samples.map(({ rpm }) => rpm))
      for (const { kind, start } of episodes) {
        if (kind === 'load-lost' || kind === 'jam' || kind === 'stall')
          told.push(`${seed}: ${kind} at ${start}`)
        // the sensor's noise is below 1 %
        if (kind === 'over-rev' && fastest < 0.99 * build.motor.ratedMaxRpm) told.push(`${seed}: ${kind}`)
      }
    }
    expect(told).toEqual([])
  })

  it('losses are told at their moment; most are found where the current was logged', () => {
    const found = { amps: 0, sag: 0 }
    const wrong: string[] = []
    for (let seed = 1; seed <= runsOfEach; seed += 1) {
      const stretches = withEnd(seed)
      const lostAt = secondsOf(stretches) - 7
      const run = simulatedRun(build, stretches, seed % 3 === 0 ? 10 : 5, lostAt)
      for (const by of ['amps', 'sag'] as const) {
        const csv = loggedCsv(run, seed, { ...sensorsOf(seed), amps: by === 'amps' })
        const loss = resultOfText(csv, {}, build).episodes.find(({ kind }) => kind === 'load-lost')
        if (loss === undefined) continue
        found[by] += 1
        if (Math.abs(loss.start - lostAt) > 1)
          wrong.push(`${seed}, ${by}: told at ${loss.start}, was at ${lostAt}`)
      }
    }
    console.log(
      `${build.name}: of ${runsOfEach} losses ${found.amps} found by amps, ${found.sag} by sag alone`,
    )
    expect(wrong).toEqual([])
    expect(found.amps).toBeGreaterThanOrEqual(0.75 * runsOfEach)
  })

  it('a loss ends with the last sample before a gap: nobody knows what the motor did in it', () => {
    const stretches = withEnd(1)
    const lostAt = secondsOf(stretches) - 7
    const [head = '', ...rows] = loggedCsv(simulatedRun(build, stretches, 10, lostAt), 1, sensorsOf(1))
      .trimEnd()
      .split('\n')
    const isIn = (row: string) => Number.parseFloat(row) > lostAt + 3.5 && Number.parseFloat(row) < lostAt + 6
    const log = [head, ...rows.filter((row) => !isIn(row)), ''].join('\n')
    const loss = resultOfText(log, {}, build).episodes.find(({ kind }) => kind === 'load-lost')
    expect(loss?.start).toBeGreaterThan(lostAt - 1)
    expect(loss?.end).toBeLessThanOrEqual(lostAt + 3.5)
    expect(loss?.endBefore).toBeGreaterThanOrEqual(lostAt + 6)
  })
})

import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { alarmsOf } from '../../shared-engine/alarms/alarms.ts'
import { tableCsv } from '../../shared-engine/draw/table.ts'
import { check, readBuildText, type Checked } from '../../shared-engine/index.ts'
import { subjectOf } from '../../src-renderer/limits/subject.ts'
import { workingIn } from '../../src-renderer/parts/working-of.ts'
import { alarmTable, firstAlarm, quietAt } from '../../src-renderer/questions/hot/alarm-card.ts'

function checkedDemo(file: string): Checked {
  const read = readBuildText(readFileSync(new URL(`../../examples/${file}`, import.meta.url), 'utf8'))
  if (!read.ok) throw new Error('the demo cannot be read')
  return check(read.value)
}

const checked = checkedDemo('quick-sled-puller.build.json')
const alarms = alarmsOf(checked)

describe('the alarm card', () => {
  it('is quiet again on the safe side of each alarm', () => {
    for (const alarm of alarms) {
      const { value, direction, hysteresis } = alarm
      const quiet = quietAt(alarm)
      if (value === null || hysteresis === null) expect(quiet).toBeNull()
      else if (direction === 'alarm when above') expect(quiet).toBeLessThan(value)
      else expect(quiet).toBeGreaterThan(value)
    }
  })

  it('opens with the alarm that leaves the least time, else with the first that can be set', () => {
    const [first, ...others] = alarms.filter(({ value }) => value !== null)
    if (first === undefined) throw new Error('the demo has alarms')
    const untimed = [first, ...others].map((one) => ({ ...one, warningSeconds: null }))
    expect(firstAlarm(untimed)).toBe(untimed[0])
    const timed = {
      ...first,
      id: 'timed',
      warningSeconds: first.warningSeconds === null ? 4 : first.warningSeconds / 2,
    }
    expect(firstAlarm([first, { ...timed, warningSeconds: 1e6 }, timed])).toBe(timed)
  })

  it('has a working for each of its lines, as the window looks it up', () => {
    for (const { working, label, value } of alarms) {
      expect(subjectOf(checked, working.subject)).toMatchObject({ label, value })
      expect(workingIn(checked, working.subject)?.title).toBe(working.title)
    }
    expect(workingIn(checked, 'alarm:none')).toBeNull()
    expect(workingIn(checked, 'freeRpm')?.subject).toBe('freeRpm')
  })

  it('goes into a table with plain numbers', () => {
    const lines = tableCsv(alarmTable(alarms, 'metric')).trimEnd().split('\r\n')
    expect(lines).toHaveLength(2 + alarms.length)
    // 95 % of the rated 30,000 rpm, quiet two hundredths below; hundredths of a second are left from there to the limit.
    expect(lines[1]).toMatch(/^Motor rpm,alarm when above,28500,rpm,27900,0\.5,0\.0\d+,[\d.]+,95\u202F% of /)
    expect(lines[1]).toContain(',can’t guard,')
    expect(lines.at(-1)).toMatch(/^Signal lost,no signal for,2,s,/)
  })
})

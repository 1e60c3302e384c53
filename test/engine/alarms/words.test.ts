import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import type { Alarm } from '../../../shared-engine/alarms/alarms.ts'
import type { RpmGuard } from '../../../shared-engine/alarms/guard.ts'
import { alarmsOf } from '../../../shared-engine/alarms/alarms.ts'
import { alarmWords } from '../../../shared-engine/alarms/words.ts'
import { check } from '../../../shared-engine/check.ts'
import { readBuildText } from '../../../shared-engine/entries/read.ts'

const demo = new URL('../../../examples/quick-sled-puller.build.json', import.meta.url)
const read = readBuildText(readFileSync(demo, 'utf8'))
if (!read.ok) throw new Error('the demo cannot be read')
const alarms = alarmsOf(check(read.value))
const rpm = alarms.find(({ id }) => id === 'rpm') as Alarm & { readonly rpm: RpmGuard }
const wordsOf = (part: Partial<RpmGuard>) => {
  const alarm = { ...rpm, rpm: { ...rpm.rpm, ...part } }
  return alarmWords(alarm, [alarm, ...alarms.filter(({ id }) => id !== 'rpm')], 'metric')
}

test('an alarm that leaves no hand time says so and names the cap, rounded to the safe side', () => {
  const words = wordsOf({ seconds: 0.4, guards: false, capPercent: 61.97 })
  expect(words?.verdict).toBe('can’t guard')
  expect(words?.guards).toMatch(/^An alarm can’t guard this: 0\.4/)
  expect(words?.guards).toContain('set the throttle cap to 61.9\u202F% or less')
})

test('no cap is asked for that full throttle does not need', () => {
  for (const capPercent of [null, 100, 130])
    expect(wordsOf({ seconds: 0.4, guards: false, capPercent })?.guards).not.toContain('set the throttle cap')
})

test('one that leaves time, or is never passed, guards', () => {
  expect(wordsOf({ seconds: 4, guards: true })?.verdict).toBe('guards')
  expect(wordsOf({ seconds: null, guards: true })?.guards).toContain('Nothing pushes')
})

test('every alarm that can be set has its words, and no other', () => {
  for (const alarm of alarms) {
    const words = alarmWords(alarm, alarms, 'metric')
    if (alarm.value === null) expect(words).toBeNull()
    else for (const text of Object.values(words ?? {})) expect(text).toMatch(/\w{3}/)
  }
})

test('a controller’s alarm says which earlier value leaves how many seconds', () => {
  const controller = alarms.find(({ id }) => id === 'controller')
  if (controller?.earlier === undefined) throw new Error('the demo has the controller’s heat capacity')
  const { controller: entries } = read.value
  // By hand, of the demo's entries: no switching times, so the loss is I² R alone; the burst is the largest that its
  // ground lets happen, as `check` gives it.
  const loss = (check(read.value).figures.burstMotorAmps ?? NaN) ** 2 * (entries.resistanceMilliohm / 1000)
  expect(controller.earlier.value).toBe(85)
  expect(controller.earlier.seconds).toBeCloseTo((260 * 10) / loss, 6)
  expect(controller.warningSeconds).toBeNull()
  expect(alarmWords(controller, alarms, 'metric')?.guards).toMatch(/set at 85\.0.°C it leaves \d+.s or more/)
})

test('a case that lags says that bursts pass it by', () => {
  const lagging = { ...rpm, id: 'case', kind: 'temperature', value: 90, guards: false } as const
  const words = alarmWords(lagging, alarms, 'metric')
  expect(words?.verdict).toBe('can’t guard')
  expect(words?.guards).toContain('bursts')
})

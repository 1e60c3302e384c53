import { readdirSync, readFileSync } from 'node:fs'
import { all, create } from 'mathjs'
import { describe, expect, test } from 'vitest'
import { readBuildText, readBuildValue } from '../../../shared-engine/entries/read.ts'
import { check } from '../../../shared-engine/check.ts'
import { alarmsOf, type Alarm } from '../../../shared-engine/alarms/alarms.ts'
import { secondsToMotorLimit } from '../../../shared-engine/heat/motor.ts'
import { runDrive } from '../../../shared-engine/drive/run.ts'
import { evaluateExpression } from '../../../shared-engine/workings/expression/evaluate.ts'
import { parseExpression } from '../../../shared-engine/workings/expression/parse.ts'
import { plainBuild } from '../../fixtures/build/plain.ts'

const math = create(all ?? {})
const folder = new URL('../../golden/', import.meta.url)
const goldens = readdirSync(folder).filter((name) => name.endsWith('.build.json'))

function checkedOf(text: string) {
  const read = readBuildText(text)
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  return check(read.value)
}

const row = (rows: readonly Alarm[], id: string): Alarm => {
  const found = rows.find((one) => one.id === id)
  if (found === undefined) throw new Error(`no alarm ${id}`)
  return found
}

describe.each(goldens)('%s', (file) => {
  const rows = alarmsOf(checkedOf(readFileSync(new URL(file, folder), 'utf8')))

  test('every working replays to its numbers, and the last ones are those of the card', () => {
    for (const { value, warningSeconds, working } of rows) {
      const scope: Record<string, number> = {}
      for (const { symbol, value: put } of working.symbols) if (put !== null) scope[symbol] = put
      for (const { symbol, expression, value: told } of working.steps) {
        const again = Number(math.evaluate(expression ?? 'NaN', scope))
        // The page sets it as mathematics with the reader that ships.
        const shipped = evaluateExpression(parseExpression(expression ?? ''), (name) => scope[name] ?? NaN)
        expect(Math.abs(shipped - again)).toBeLessThanOrEqual(1e-9 * Math.abs(again)) // rounding of one algebra
        // 1e-9: the same closed form, written once more in plain algebra.
        expect(Math.abs(again - (told ?? NaN))).toBeLessThanOrEqual(1e-9 * Math.abs(again))
        scope[symbol] = again
      }
      const told = working.steps.map((step) => step.value)
      expect(value === null ? working.missing : told.includes(value)).toBeTruthy()
      if (warningSeconds !== null) expect(told.at(-1)).toBe(warningSeconds)
    }
  })

  test('the direction is in words, and the right way round', () => {
    for (const { id, direction } of rows) {
      expect(direction).toBe(id.endsWith('-volts') ? 'alarm when below' : 'alarm when above')
    }
  })
})

/** Demo data. */
function heated() {
  const plain = plainBuild()
  const read = readBuildValue({
    ...plain,
    motor: { ...plain.motor, heatCapacityJPerK: 80, thermalResistanceKPerW: 2, maxTemperatureC: 80 },
    stages: [{ kind: 'fixed', ratio: 4 }],
    vehicle: { massKg: 12, towForceN: 60 },
    service: { reservePercent: 20 },
  })
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  return check(read.value)
}

test('the motor’s warning is the time from the alarm to the limit, as the closed form of warming has it', () => {
  const checked = heated()
  const { value, warningSeconds } = row(alarmsOf(checked), 'motor-temperature')
  const { amps, ironLoss, sink } = checked.evaluation.heat
  const until = (limit: number) => secondsToMotorLimit(sink, 2, 80, ironLoss, amps, 0.025, limit)
  expect(value).toBe(70)
  // 1e-9: difference of two closed forms.
  expect(Math.abs((warningSeconds ?? NaN) / (until(80) - until(70)) - 1)).toBeLessThan(1e-9)
})

test('pack volts are what a drive at the reserve shows under that current', () => {
  const checked = heated()
  const alarm = row(alarmsOf(checked), 'pack-volts')
  // Resting volts of a cell at 20 % (reference/chemistry.json) less the drop of 60 % of the top-speed current.
  const amps = 0.6 * (checked.figures.topPackAmps ?? NaN)
  const run = runDrive(
    { ...checked.build, service: { ...checked.build.service, stateOfChargePercent: 20.000001 } },
    { name: 'demo: rest', notes: '', rows: [{ seconds: 0.1, ask: { throttle: 0 }, grade: 0 }] },
  )
  const resting = run.series[0]?.packVolts ?? NaN
  // 1e-6: a millionth of a percent of charge more than the reserve.
  expect(
    Math.abs((alarm.value ?? NaN) / (resting - amps * checked.machine.pack.resistance) - 1),
  ).toBeLessThan(1e-6)
  expect(row(alarmsOf(checked), 'cell-volts').value).toBeCloseTo((alarm.value ?? NaN) / 6, 12)
})

test('rpm keeps to the slower of motor and controller, electrical rpm counts pole pairs', () => {
  const plain = plainBuild()
  const read = readBuildValue({ ...plain, controller: { maxElectricalRpm: 70_000 } })
  if (!read.ok) throw new Error('the plain build is valid')
  const rows = alarmsOf(check(read.value))
  // 70,000 over 7 pole pairs is 10,000, below the motor's 15,000; 95 % of it.
  expect(row(rows, 'rpm').value).toBeCloseTo(9500, 9)
  expect(row(rows, 'electrical-rpm').value).toBeCloseTo(66_500, 9)
})

import { readdirSync, readFileSync } from 'node:fs'
import { all, create } from 'mathjs'
import { describe, expect, test } from 'vitest'
import { readBuildText, readBuildValue } from '../../../shared-engine/entries/read.ts'
import { check } from '../../../shared-engine/check.ts'
import { alarmsOf, type Alarm } from '../../../shared-engine/alarms/alarms.ts'
import { plainRow } from '../../../shared-engine/drive/rows.ts'
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

test('the case sounds at nine tenths of its rise over the air when the motor is at its limit', () => {
  const checked = heated()
  const { value, guards } = row(alarmsOf(checked), 'case')
  // One node: the case is the motor, 80 °C in air of 15 °C; whether a burst passes unseen is then not known.
  expect(value).toBeCloseTo(15 + 0.9 * 65, 9)
  expect(guards).toBeUndefined()
})

test('pack volts are those at rest at the reserve, and what a drive there shows under the pattern’s current', () => {
  const checked = heated()
  const alarm = row(alarmsOf(checked), 'pack-volts')
  // Resting volts of a cell at 20 % (reference/chemistry.json), less the drop of the pattern's RMS current.
  const amps = checked.figures.patternPackAmpsRms ?? NaN
  const run = runDrive(
    { ...checked.build, service: { ...checked.build.service, stateOfChargePercent: 20.000001 } },
    { name: 'demo: rest', notes: '', rows: [plainRow('throttle', 0, 0.1, 0)] },
  )
  const resting = run.series[0]?.packVolts ?? NaN
  // 1e-6: a millionth of a percent of charge more than the reserve.
  expect(Math.abs((alarm.value ?? NaN) / resting - 1)).toBeLessThan(1e-6)
  const shown = resting - amps * checked.machine.pack.resistance
  expect(Math.abs((alarm.voltsAtRms ?? NaN) / shown - 1)).toBeLessThan(1e-6)
  expect(alarm.ohm).toBe(checked.machine.pack.resistance)
  expect(row(alarmsOf(checked), 'cell-volts').value).toBeCloseTo((alarm.value ?? NaN) / 6, 12)
})

test('charge used is the charge down to the reserve, less what cold cells hold back', () => {
  // 5,000 mAh, 80 % of it, as warm as the air's 15 °C; cells give 0.93 at 10 °C, all at 25 °C (reference/heat.json).
  const share = 0.93 + (0.07 * 5) / 15
  expect(row(alarmsOf(heated()), 'charge-used').value).toBeCloseTo(5 * 3600 * 0.8 * share, 6)
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

test('seconds of warning: heat over power for case and coolant, charge over current for the pack', () => {
  const checked = heated()
  const rows = alarmsOf(checked)
  const { evaluation, machine } = checked
  // A winding of 80 J/K a tenth of its rise of 65 K below 80 °C; copper 0.393 % a kelvin above 20 °C.
  const [amps, cold] = [evaluation.times.launch.amps, machine.motor.resistance]
  const inAJam = (80 * 6.5) / (amps * amps * cold * (1 + 0.00393 * 60))
  expect(row(rows, 'case').warningSeconds).toBeCloseTo(inAJam, 6)
  const { packAmpsRms } = evaluation.pattern
  const { capacity, usable, stateOfCharge } = machine.pack
  const left = (usable / (stateOfCharge - 0.2)) * 0.2
  for (const id of ['pack-volts', 'cell-volts', 'charge-used'])
    expect(row(rows, id).warningSeconds).toBeCloseTo(left / packAmpsRms, 6)
  expect(left).toBeLessThanOrEqual(0.2 * capacity)
  // What sounds at its own limit warns of nothing, and what is not there neither.
  expect(row(rows, 'controller').warningSeconds).toBeNull()
  expect(row(rows, 'coolant').warningSeconds).toBeNull()
})

test('the coolant’s warning is what its own mass takes in while the air stands: 0.2 L of half glycol at 10 K', () => {
  const demo = readFileSync(new URL('../../../examples/hut-hauler.build.json', import.meta.url), 'utf8')
  const checked = checkedOf(demo)
  const { heat } = checked.evaluation
  const watts = heat.capacityRate * (heat.hot - heat.feed)
  // 1071 kg/m³ and 3300 J/(kg K): the coolants’ table.
  const seconds = (1071 * 0.2e-3 * 3300 * 10) / watts
  expect(row(alarmsOf(checked), 'coolant').warningSeconds).toBeCloseTo(seconds, 6)
})

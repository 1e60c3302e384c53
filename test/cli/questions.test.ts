import { readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { demoFile, demos, pitchline, temporaryFolder } from './command.ts'

// What a builder asks of heat, current and duty, and where the command line answers it in words and numbers: of the demos,
// and of a machine entered from scratch into what `pitchline new` writes. Cold air, so that January is in it.

const folder = temporaryFolder()

/** Demo data: what a builder writes down beside the assumed rest: cooling, wires, capacitors, brakes, ratings. */
const entered = {
  pack: {
    series: 12,
    parallel: 2,
    capacityMah: 8000,
    fuseAmps: 120,
    chargeC: 1,
    continuousC: 10,
    burstC: 20,
  },
  controller: {
    resistanceMilliohm: 3,
    continuousAmps: 60,
    heatCapacityJPerK: 80,
    thermalResistanceKPerW: 1,
    maxTemperatureC: 85,
    pwmKhz: 16,
    switchingNs: 200,
    busCapacitanceMicrofarad: 1000,
    busEsrMilliohm: 15,
    busRippleAmps: 12,
    busRatedVolts: 63,
    maxVolts: 60,
    brakeAmps: 30,
  },
  motor: {
    count: 2,
    kvRpmPerVolt: 170,
    poleCount: 28,
    windingToCaseKPerW: 0.35,
    caseToSinkKPerW: 0.25,
    windingHeatCapacityJPerK: 60,
    caseHeatCapacityJPerK: 380,
  },
  vehicle: { massKg: 45, loadKg: 20 },
  ground: { gradePercent: 15, airTemperatureC: -10 },
} as const

const whole = {
  stages: [{ kind: 'fixed', ratio: 8, efficiencyPercent: 90 }],
  cooling: { kind: 'liquid', flowLPerMin: 0.6, coolant: 'glycol30', radiatorWPerK: 8, pumpWatts: 8 },
  wires: [
    { name: 'pack leads', circuit: 'pack', areaMm2: 6, lengthM: 1.2, connectorAmps: 60 },
    { name: 'motor leads', circuit: 'motor', awg: 14, lengthM: 0.9 },
  ],
}

function fromScratch(): string {
  const file = path.join(folder(), 'mine.build.json')
  expect(pitchline(['new', file]).code).toBe(0)
  const stored = JSON.parse(readFileSync(file, 'utf8')) as Record<string, object>
  const parts = Object.entries(entered).map(([key, part]) => [key, { ...stored[key], ...part }] as const)
  writeFileSync(file, JSON.stringify({ ...stored, ...Object.fromEntries(parts), ...whole }))
  return file
}

interface Row {
  readonly id: string
  readonly margin: number | null
  readonly standing: string
}

/** One line of the ledger: actual, allowed, unit, margin. */
const lineOf = (id: string) =>
  new RegExp(`\\n  ${id.replaceAll('.', '\\.')} +−?[\\d.,]+ [≤≥] −?[\\d.,]+ +\\S`)

describe.each([...demos, 'from scratch'])('%s', (name) => {
  let file = ''
  const ask = (...words: string[]) => {
    if (file === '') file = name === 'from scratch' ? fromScratch() : demoFile(name as (typeof demos)[number])
    // Numbers stand beside their units with a narrow blank.
    return pitchline([words[0] ?? '', file, ...words.slice(1)]).out.replaceAll('\u202F', ' ')
  }
  const rows = () => (JSON.parse(ask('check', '--json')) as { limits: Row[] }).limits
  const marginOf = (id: string) => rows().find((row) => row.id === id)?.margin ?? NaN
  const isCooled = () => ask('pattern', 'Hut round').includes('flow of the pump')

  it('will it cook in my kind of drive: how hot by when, and what is passed', () => {
    const drive = ask('pattern', 'Long climb')
    expect(drive).toMatch(/Hottest winding +−?[\d.]+ °C +at [\d.]+ (min|s)/)
    expect(drive).toMatch(/Limits passed\n {2}(none|\S.* passes [\s\S]*? Would help: )/)
    expect(ask('check')).toMatch(lineOf('motor.temperature'))
    // In a sentence too, on the sheet.
    expect(ask('report', '--date', '2026-11-29')).toMatch(
      /The winding settles at −?[\d.]+ °C, [\d.]+ K (below|above) its limit/,
    )
  })

  it('how fast must the pump turn in January and in July: the least flow, and where it freezes', () => {
    if (!isCooled()) {
      expect(name).not.toMatch(/hut-hauler|from scratch/)
      return
    }
    const drive = ask('pattern', 'Hut round').replace(/\s+/g, ' ')
    expect(drive).toMatch(/At −(8|10)\S* °C [\d.]+ L\/min is enough for this drive\./)
    expect(drive).toMatch(/ At 30\.0 °C [\d.]+ L\/min\. Below −[\d.]+ °C this coolant freezes\./)
  })

  it('is this wire thick enough: how warm, through and in a burst, what it bears, and whether the fuse guards it', () => {
    const check = ask('check')
    for (const wire of ['wire.1', 'wire.2']) {
      expect(check).toMatch(lineOf(`${wire}.temperature`))
      expect(check).toMatch(lineOf(`${wire}.burst`))
    }
    expect(check).toMatch(lineOf('wire.1.protected'))
    expect(check).toMatch(/Wires\n {2}1 pack leads: [\d.]+ mΩ\n.*warm through .*\n +bears [\d.,]+ A for long/)
    if (marginOf('wire.1.protected') < 0)
      expect(check).toContain('In a short circuit wire 1 burns before the fuse opens.')
  })

  it('are the capacitors enough: their ripple current against their rating, and the volts on them', () => {
    const check = ask('check')
    expect(check).toMatch(lineOf('controller.ripple-current'))
    expect(check).toMatch(/Ripple current of the capacitors through the pattern +[\d.]+ A/)
    expect(ask('report', '--all', '--date', '2026-11-29')).toContain('| Ripple current of the capacitors |')
    const text = ask('explain', 'controller.ripple-current')
    expect(text).toMatch(/capacitors/)
    expect(text).toContain('margin to what may not be passed')
  })

  it('does braking on a full pack kill the controller: its volts then, and what it does to the cells', () => {
    const check = ask('check')
    expect(check).toMatch(lineOf('controller.over-volts'))
    const brakes = Number(/Motor current as a stop begins +([\d.]+|–)/.exec(check)?.[1]) > 0
    expect(brakes).toBe(/hut-hauler|from scratch/.test(name))
    if (brakes) {
      expect(check).toMatch(lineOf('pack.charge-volts'))
      expect(check).toMatch(/\n {2}pack\.charge-current +[\d.,]+ ≤ [\d.,]+/)
    } else {
      const why = ask('explain', 'brakeMotorAmps').replace(/\s+/g, ' ')
      expect(why).toContain('it coasts: no braking current is entered (controller.brakeAmps)')
    }
    if (marginOf('pack.charge-volts') < 0)
      expect(check).toContain('Braking on a full pack overcharges the cells.')
  })

  it('what must my alarms say: what to set, held how long, how much warning, and what it can guard', () => {
    const card = ask('alarms').replace(/\s+/g, ' ')
    for (const label of ['Motor rpm', 'Pack volts at the reserve', 'Charge used', 'Controller temperature'])
      expect(card).toMatch(new RegExp(`${label}: alarm when (above|below) [\\d.,]+ \\S+ \\(held`))
    expect(card).toMatch(/Guards( in part)?: |can’t guard this/)
    expect(card).toMatch(/Signal lost: Set the receiver to shut the throttle/)
  })
})

import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { alarmRows } from '../../shared-engine/alarms/rows.ts'
import { check } from '../../shared-engine/check.ts'
import { readBuildValue } from '../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../shared-engine/entries/schema.ts'
import { wireFiguresOf } from '../../shared-engine/figures/wiring.ts'
import { heatNotes } from '../../shared-engine/limits/heat-remarks.ts'
import { isClose } from './tolerances.ts'

// Six invented builds for heat and electrics, with what two implementations, written from the same text apart from this
// one, give for them. They show that a reading of the text is the same; that it is right is for test/sources.

interface Owed {
  readonly figures: Readonly<Record<string, number | null>>
  readonly limits: readonly {
    readonly id: string
    readonly actual: number | null
    readonly allowed: number | null
    readonly unit: string
    readonly margin: number | null
    readonly standing: string
    readonly case: string
  }[]
  readonly alarms: readonly Readonly<Record<string, string | number | boolean>>[]
  readonly notes: readonly string[]
}

const exact = { relative: 1e-9, absolute: 0, reason: 'closed form: rounding alone' } as const
const solved = { relative: 1e-6, absolute: 1e-9, reason: 'hangs on the equilibrium, a root or an integral' } as const
const degrees = { relative: 0, absolute: 1e-6, reason: 'zero of the Celsius scale is arbitrary' } as const

/** What neither root, integral nor top speed plays a part in. */
const closedForms = new Set([
  'packUsableMah',
  'patternTurnSeconds',
  'coldFlowLPerMin',
  'labelMotorC',
  'holdMotorAmps',
  'spinUpMotorAmps',
  'creepMps',
])

const closenessOf = (name: string, unit?: string) =>
  closedForms.has(name) ? exact : unit === 'degC' || /C$/.test(name) ? degrees : solved

const numbers = ['01', '02', '03', '04', '05', '06']
const folder = new URL('./2/heat/', import.meta.url)

function checked(number: string) {
  const stored = JSON.parse(readFileSync(new URL(`${number}.build.json`, folder), 'utf8')) as StoredBuild
  const read = readBuildValue(stored)
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  return check(read.value)
}
const owedWires = ({ figures }: Owed) => ({
  wires: (figures['wires'] ?? []) as unknown as readonly Readonly<Record<string, number>>[],
})
const owedBy = (number: string) =>
  JSON.parse(readFileSync(new URL(`${number}.expected.json`, folder), 'utf8')) as Owed

describe.each(numbers)('golden build %s of heat', (number) => {
  const owed = owedBy(number)
  const found = checked(number)

  it('gives every figure', () => {
    const figures: Readonly<Record<string, number | null>> = found.figures
    const wrong = Object.entries(owed.figures)
      .filter(([name]) => name !== 'wires')
      .filter(([name, value]) => !isClose(figures[name], value, closenessOf(name)))
      .map(([name, value]) => `${name}: ${figures[name]} instead of ${value}`)
    expect(wrong).toEqual([])
  })

  it('gives every wire', () => {
    const { wires, evaluation, machine } = { ...owedWires(owed), ...found }
    const all = wireFiguresOf(evaluation, machine)
    expect(all).toHaveLength(wires.length)
    const wrong = wires.flatMap((wire, at) =>
      Object.entries(wire)
        .filter(([name, value]) => !isClose(all[at]?.[name as keyof (typeof all)[number]], value, exact))
        .map(([name, value]) => `wire ${at + 1} ${name}: not ${value}`),
    )
    expect(wrong).toEqual([])
  })

  it('gives the limits of heat and electrics, in order', () => {
    const ids = new Set(owed.limits.map(({ id }) => id))
    const heat = /^(cooling|wire|stepdown|accessory)\.|^(motor|controller|pack)\.(current|temperature|burst-heat|fuse|ripple)/
    const rows = found.limits.filter(({ id }) => ids.has(id) || heat.test(id))
    const wanted = owed.limits
    const line = ({ id, unit, standing, case: at }: (typeof wanted)[number]) => `${id} ${unit} ${standing} ${at}`
    expect(rows.map(line)).toEqual(wanted.map(line))
    const wrong = wanted.flatMap((limit, place) => {
      const row = rows[place]
      const near = closenessOf(limit.id, limit.unit)
      const off: string[] = []
      for (const key of ['actual', 'allowed'] as const) {
        if (!isClose(row?.[key], limit[key], near)) off.push(`${key} ${row?.[key]} instead of ${limit[key]}`)
      }
      if (!isClose(row?.margin, limit.margin, { ...solved, absolute: 1e-6 })) {
        off.push(`margin ${row?.margin} instead of ${limit.margin}`)
      }
      return off.map((one) => `${limit.id}: ${one}`)
    })
    expect(wrong).toEqual([])
  })

  it('gives the alarms of pack, heat and bursts', () => {
    const ids = owed.alarms.map(({ id }) => id)
    const rows = alarmRows(found).filter(({ id }) => ids.includes(id))
    expect(rows.map(({ id, unit, guards }) => [id, unit, guards])).toEqual(
      owed.alarms.map(({ id, unit, guards }) => [id, unit, guards]),
    )
    for (const [place, alarm] of owed.alarms.entries()) {
      for (const key of ['value', 'ohm', 'voltsAtRms'] as const) {
        const number = alarm[key]
        if (typeof number !== 'number') expect(rows[place]?.[key]).toBeUndefined()
        else expect(isClose(rows[place]?.[key], number, closenessOf('', String(alarm['unit'])))).toBe(true)
      }
    }
  })

  it('says what there is to say', () => {
    const sentences = Object.entries(heatNotes).filter(([, sentence]) => found.notes.includes(sentence))
    expect(sentences.map(([id]) => id).toSorted()).toEqual(owed.notes.toSorted())
  })
})

it('the comparison notices what is off by more than its tolerance', () => {
  for (const number of numbers) {
    for (const [name, value] of Object.entries(owedBy(number).figures)) {
      if (typeof value !== 'number' || value === 0) continue
      const off = value + 3e-6 * Math.max(Math.abs(value), 1)
      expect(isClose(off, value, closenessOf(name)), name).toBe(false)
      expect(isClose(null, value, closenessOf(name)), name).toBe(false)
    }
  }
})

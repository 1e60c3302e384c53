import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { evaluate } from '../../../shared-engine/cases/evaluate.ts'
import { Evaluation } from '../../../shared-engine/cases/evaluation.ts'
import { readBuild } from '../../../shared-engine/entries/read.ts'
import { figureTable } from '../../../shared-engine/figures/table.ts'
import { isDecisive } from '../../../shared-engine/limits/group.ts'
import { Ledger, ledgerRows } from '../../../shared-engine/limits/ledger.ts'
import { measureLedger } from '../../../shared-engine/limits/measure.ts'
import { machineOf } from '../../../shared-engine/machine/machine.ts'

const golden = new URL('../../golden/2/', import.meta.url)
const builds = readdirSync(golden).filter((name) => name.endsWith('.build.json'))

function worked(name: string, mishaps: boolean) {
  const read = readBuild(readFileSync(new URL(name, golden)))
  if (!read.ok) throw new Error(`${name} does not read`)
  const machine = machineOf(read.value)
  const evaluation = new Evaluation(mishaps)
  evaluate(evaluation, machine)
  const ledger = new Ledger()
  measureLedger(ledger, evaluation, machine)
  return { machine, evaluation, rows: ledgerRows(ledger) }
}

describe('an evaluation without mishaps', () => {
  it.each(builds)('has every figure and limit of ordinary use to the last digit: %s', (name) => {
    const [whole, ordinary] = [worked(name, true), worked(name, false)]
    for (const figure of figureTable.filter(({ ofMishaps }) => !ofMishaps)) {
      const [owed, found] = [whole, ordinary].map((one) => figure.value(one.evaluation, one.machine))
      expect([figure.name, found]).toEqual([figure.name, owed])
    }
    expect(ordinary.rows.filter(({ group }) => isDecisive(group))).toEqual(
      whole.rows.filter(({ group }) => isDecisive(group)),
    )
  })

  it('leaves out what a jam would do', () => {
    const rows = builds.flatMap((name) => worked(name, false).rows)
    expect(rows.filter(({ id }) => /\.stop-|-free$|burst-speed/.test(id))).toEqual([])
    expect(builds.flatMap((name) => worked(name, true).rows).some(({ id }) => /\.stop-/.test(id))).toBe(true)
  })
})

import fc from 'fast-check'
import { expect, it } from 'vitest'
import { evaluate } from '../../../shared-engine/cases/evaluate.ts'
import { Evaluation } from '../../../shared-engine/cases/evaluation.ts'
import { figuresOf } from '../../../shared-engine/figures/table.ts'
import { Ledger, ledgerRows } from '../../../shared-engine/limits/ledger.ts'
import { measureLedger } from '../../../shared-engine/limits/measure.ts'
import type { Machine } from '../../../shared-engine/machine/parts.ts'
import { machines } from '../../laws/machines.ts'

// A search fills one evaluation again and again, and keeps in it what the next machine shares with the one before.

function told(e: Evaluation, machine: Machine) {
  const ledger = new Ledger()
  evaluate(e, machine)
  measureLedger(ledger, e, machine)
  return { figures: figuresOf(e, machine), limits: ledgerRows(ledger) }
}

it('says of a machine the same whatever machine was evaluated before', () => {
  const parts = ['pack', 'controller', 'motor', 'track', 'vehicle', 'ground', 'service'] as const
  fc.assert(
    fc.property(machines, machines, fc.subarray([...parts]), (one, other, taken) => {
      const mixed = { ...one, ...Object.fromEntries(taken.map((part) => [part, other[part]])) } as Machine
      const e = new Evaluation()
      told(e, one)
      expect(told(e, mixed)).toEqual(told(new Evaluation(), mixed))
      expect(told(e, one)).toEqual(told(new Evaluation(), one))
    }),
    { numRuns: 60 },
  )
})

import type { Evaluation } from '../cases/evaluation.ts'
import { caseNumber } from '../cases/case.ts'
import type { Machine } from '../machine/parts.ts'
import type { LimitWorking } from '../workings/limit.ts'
import {
  burstAmps,
  conductor,
  patternAmps,
  steadyTemperature,
  surface,
  wireSource,
} from '../workings/wires.ts'
import { addMaximum, addTemperature, type Ledger } from './ledger.ts'
import { listedLimit, type Limit, type LimitFacts } from './limit.ts'

const checks = ['temperature', 'connector', 'burst', 'protected'] as const
type WireCheck = (typeof checks)[number]

/** Limits of wires; they count from 1. */
export type WireLimitId = `wire.${number}.${WireCheck}`

/** Most wires of the build's schema. */
const most = 20

type OwnFacts = Pick<LimitFacts, 'group' | 'sense' | 'unit' | 'kind'> & {
  readonly label: string
  readonly needs: (path: string) => readonly string[]
  readonly working: (index: number) => LimitWorking
}

const hot = { sense: 'temperature', unit: 'degC', kind: 'temperature' } as const
const amps = { sense: 'maximum', unit: 'A', kind: 'amps' } as const
const insulation = 'the insulation’s own rating'

const facts: Readonly<Record<WireCheck, OwnFacts>> = {
  temperature: {
    label: 'warm through',
    group: 'lasts',
    ...hot,
    needs: () => [],
    working: (index) => ({
      title: 'Where the conductor’s temperature settles under the RMS current, against its insulation.',
      source: `${wireSource}; ${insulation}`,
      write: (d) => {
        steadyTemperature(d, index)
        d.entry('T_max', `wires.${index}.maxTemperatureC`)
        return { actual: 'T', allowed: 'T_max', sink: 'T_air' }
      },
    }),
  },
  connector: {
    label: 'connectors',
    group: 'lasts',
    ...amps,
    needs: (path) => [`${path}.connectorAmps`],
    working: (index) => ({
      title: 'The RMS current against what the weakest connector bears for long.',
      source: 'the limit is the maker’s or the builder’s own (label or data sheet)',
      write: (d) => {
        patternAmps(d, index)
        d.entry('I_max', `wires.${index}.connectorAmps`)
        return { actual: 'I', allowed: 'I_max' }
      },
    }),
  },
  burst: {
    label: 'after a burst',
    group: 'holds',
    ...hot,
    needs: () => [],
    working: (index) => ({
      title: 'How hot the conductor is after the greatest burst, begun warm, against its insulation.',
      source: `IEC 60949, no heat leaves meanwhile; ${wireSource}; ${insulation}`,
      write: (d, row) => {
        steadyTemperature(d, index)
        burstAmps(d, index, row.case)
        d.entry('t', 'service.burstSeconds')
        const told = ['temperature', 'temperature after the burst'] as const
        d.step('T_b', told, '(T + 234.5) * exp(t * (I_b / n / (226000000 * A))^2) - 234.5')
        d.entry('T_max', `wires.${index}.maxTemperatureC`)
        return { actual: 'T_b', allowed: 'T_max', sink: 'T_air' }
      },
    }),
  },
  protected: {
    label: 'protected by the fuse',
    group: 'mishap',
    ...amps,
    needs: () => ['pack.fuseAmps'],
    working: protectedWorking,
  },
}

function protectedWorking(index: number): LimitWorking {
  return {
    title: 'The fuse’s rating against the current at which the insulation is at its limit.',
    source: wireSource,
    missing: ({ build }) =>
      build.wires[index]?.circuit === 'pack' ? null : { why: 'the fuse guards the wires of the pack alone.' },
    write: (d) => {
      const { machine } = d.checked
      d.entry('I_f', 'pack.fuseAmps')
      const told = ['amps', 'current at which the insulation is at its limit'] as const
      d.entry('T_max', `wires.${index}.maxTemperatureC`)
      d.entry('T_air', 'ground.airTemperatureC')
      if (!((machine.wires[index]?.maxTemperature ?? 0) > machine.ground.airTemperature)) {
        d.found('I_a', told, 'none: T_air is not below T_max', 0)
        return { actual: 'I_f', allowed: 'I_a' }
      }
      conductor(d, index)
      surface(d, index)
      d.constant('rho', 'copperResistivity')
      d.constant('alpha_cu', 'copperTemperatureCoefficient')
      const warm = '(1 + alpha_cu * (T_max - 20))'
      d.step('I_a', told, `n * sqrt(h * (T_max - T_air)^1.25 * A / (rho * ${warm}))`)
      return { actual: 'I_f', allowed: 'I_a' }
    },
  }
}

const made = (check: WireCheck): readonly Limit[] =>
  Array.from({ length: most }, (_, index) => {
    const { label, group, sense, unit, kind, needs, working } = facts[check]
    return listedLimit({
      id: `wire.${index + 1}.${check}`,
      label: `Wire ${index + 1}, ${label}`,
      group,
      part: 'pack',
      question: 'hot',
      sense,
      unit,
      kind,
      needs: needs(`wires.${index}`),
      working: working(index),
    })
  })

const limits = {
  temperature: made('temperature'),
  connector: made('connector'),
  burst: made('burst'),
  protected: made('protected'),
} as const satisfies Record<WireCheck, readonly Limit[]>

/** Limits of all wires that a build may hold. *Source:* `docs/model.md` §8. */
export const wireLimits: readonly Limit[] = checks.flatMap((check) => limits[check])

/** Limits of the first so many wires. */
export function limitsOfWires(count: number): readonly Limit[] {
  return checks.flatMap((check) => limits[check].slice(0, count))
}

/** Adds those that the machine has. */
export function measureWires(ledger: Ledger, e: Evaluation, machine: Machine): void {
  const { wires, pack, ground } = machine
  for (let index = 0; index < wires.length; index += 1) {
    const wire = wires[index]
    const state = e.wiring.wires[index]
    const temperature = limits.temperature[index]
    const connector = limits.connector[index]
    const burst = limits.burst[index]
    const fused = limits.protected[index]
    if (wire === undefined || state === undefined || temperature === undefined || connector === undefined)
      continue
    if (burst === undefined || fused === undefined) continue
    const { airTemperature } = ground
    addTemperature(ledger, temperature, state.steady, wire.maxTemperature, airTemperature)
    addTemperature(ledger, burst, state.burst, wire.maxTemperature, airTemperature, state.burstCase)
    if (wire.connectorAmps !== null)
      addMaximum(ledger, connector, state.amps, wire.connectorAmps, caseNumber.pattern)
    if (wire.circuit === 'pack' && pack.fuseAmps !== null)
      addMaximum(ledger, fused, pack.fuseAmps, state.ampacity, caseNumber.build)
  }
}

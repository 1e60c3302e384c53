import { stepDowns as stepDownRows } from '../entries/parts/step-downs.ts'
import { wires as wireRows } from '../entries/parts/wires.ts'
import type { Build } from '../entries/schema.ts'
import { siOf } from './si.ts'

/** A wire, both ways, of equal wires side by side. */
export interface WirePart {
  readonly name: string
  readonly circuit: 'pack' | 'motor' | 'stepDown'
  /** Place of the supply that feeds it, from 0. */
  readonly stepDown: number | null
  /** Copper of one wire, m²; null where the gauge is given. */
  readonly area: number | null
  /** American wire gauge; null where the section is given. */
  readonly gauge: number | null
  /** m, there and back. */
  readonly length: number
  readonly parallel: number
  /** m, over the insulation. */
  readonly outside: number | null
  readonly maxTemperature: number
  readonly connectorAmps: number | null
  /** Ω, all connectors in series. */
  readonly connectorResistance: number
}

/** A supply that makes a lower voltage from the pack's. */
export interface StepDownPart {
  readonly name: string
  readonly volts: number
  readonly amps: number
  readonly peakAmps: number
  readonly efficiency: number
  /** Ω. */
  readonly outputResistance: number
  readonly lowestVolts: number | null
  readonly minimumInputVolts: number | null
}

const wireIn = siOf(wireRows.item.entries)
const stepDownIn = siOf(stepDownRows.item.entries)

/** A wire in SI. */
export function wirePartOf(wire: Build['wires'][number]): WirePart {
  const si = wireIn(wire)
  return {
    name: wire.name,
    circuit: wire.circuit,
    stepDown: wire.stepDown ?? null,
    area: si('areaMm2'),
    gauge: wire.awg ?? null,
    length: si('lengthM'),
    parallel: wire.parallel,
    outside: si('outsideMm'),
    maxTemperature: si('maxTemperatureC'),
    connectorAmps: si('connectorAmps'),
    connectorResistance: si('connectorMilliohm'),
  }
}

/** A step-down supply in SI. */
export function stepDownPartOf(supply: Build['stepDowns'][number]): StepDownPart {
  const si = stepDownIn(supply)
  return {
    name: supply.name,
    volts: si('volts'),
    amps: si('amps'),
    peakAmps: si('peakAmps'),
    efficiency: si('efficiencyPercent'),
    outputResistance: si('outputMilliohm'),
    lowestVolts: si('lowestVolts'),
    minimumInputVolts: si('minimumInputVolts'),
  }
}

import { stepDowns as stepDownRows } from '../entries/parts/step-downs.ts'
import { wires as wireRows } from '../entries/parts/wires.ts'
import { gaugeArea, insulatedDiameter, wireResistance } from '../geometry/wire.ts'
import type { Build } from '../entries/schema.ts'
import { siOf } from './si.ts'

/** A wire, both ways, of equal wires side by side. */
export interface WirePart {
  readonly name: string
  readonly circuit: 'pack' | 'motor' | 'stepDown'
  /** Place of the supply that feeds it, from 0. */
  readonly stepDown: number | null
  /** Copper of one wire, m². */
  readonly area: number
  /** m, there and back. */
  readonly length: number
  readonly parallel: number
  /** m, over the insulation; where not given that of thin hook-up wire. */
  readonly outside: number
  /** Ω at 20 °C, its connectors with it. */
  readonly resistance: number
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
  /** A that all its loads draw, and ask for at once. */
  readonly loadAmps: number
  readonly peakLoadAmps: number
}

const wireIn = siOf(wireRows.item.entries)
const stepDownIn = siOf(stepDownRows.item.entries)

/** A wire in SI; a rule of the build sees to it that either section or gauge is given. */
export function wirePartOf(wire: Build['wires'][number]): WirePart {
  const si = wireIn(wire)
  const area = si('areaMm2') ?? gaugeArea(wire.awg ?? NaN)
  const connectors = si('connectorMilliohm')
  const length = si('lengthM')
  return {
    name: wire.name,
    circuit: wire.circuit,
    stepDown: wire.stepDown ?? null,
    area,
    length,
    parallel: wire.parallel,
    outside: si('outsideMm') ?? insulatedDiameter(area),
    resistance: wireResistance(area, length, wire.parallel) + connectors,
    maxTemperature: si('maxTemperatureC'),
    connectorAmps: si('connectorAmps'),
    connectorResistance: connectors,
  }
}

/** A step-down supply in SI. */
export function stepDownPartOf(
  supply: Build['stepDowns'][number],
  place: number,
  accessories: Build['accessories'],
): StepDownPart {
  const si = stepDownIn(supply)
  const loads = accessories.filter(({ stepDown }) => stepDown === place)
  const amps = (wattsOf: (load: (typeof loads)[number]) => number) =>
    loads.reduce((sum, load) => sum + wattsOf(load), 0) / supply.volts
  return {
    name: supply.name,
    volts: si('volts'),
    amps: si('amps'),
    peakAmps: si('peakAmps'),
    efficiency: si('efficiencyPercent'),
    outputResistance: si('outputMilliohm'),
    lowestVolts: si('lowestVolts'),
    minimumInputVolts: si('minimumInputVolts'),
    loadAmps: amps(({ watts }) => watts),
    peakLoadAmps: amps(({ peakWatts }) => peakWatts),
  }
}

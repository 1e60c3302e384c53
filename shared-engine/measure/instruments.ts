import type { Instrument } from './readings.ts'

/** A common instrument: what it reads, and what it is good for. */
interface InstrumentPreset {
  readonly id: string
  readonly label: string
  /** Names of the readings that it takes. */
  readonly reads: readonly string[]
  readonly instrument: Instrument
}

const volts = ['volts', 'acVolts', 'plusVolts', 'minusVolts', 'labelVolts']
const kilograms = [
  'backKg',
  'frontKg',
  'idleKg',
  'kg',
  'levelFrontKg',
  'loopKg',
  'outKg',
  'pullKg',
  'raisedFrontKg',
  'rearKg',
  'restKg',
  'skiKg',
  'trackKg',
]
const lengths = ['apartMm', 'armMm', 'boardMm', 'lengthMm', 'liftMm', 'riseMm', 'spanMm', 'wireMm']
const temperatures = [
  'airCelsius',
  'celsius',
  'inCelsius',
  'outCelsius',
  'packCelsius',
  'sinkCelsius',
  'windingCelsius',
]
const rpms = ['rpm', 'electricalRpm']

/**
 * Instruments that a workshop has, with what their manuals usually state. Their own manual is better.
 *
 * *Source:* common practice, no source.
 */
export const instrumentPresets: readonly InstrumentPreset[] = [
  preset('multimeter-volts', 'Multimeter, 20 V range', volts, { percent: 0.5, digits: 2, resolution: 0.01 }),
  preset('multimeter-low-volts', 'Multimeter, 2 V range', volts, {
    percent: 0.5,
    digits: 2,
    resolution: 0.001,
  }),
  preset('clamp-amps', 'Clamp meter', ['amps'], { percent: 2, digits: 5, resolution: 0.1 }),
  preset('multimeter-amps', 'Multimeter, 10 A range', ['amps'], {
    percent: 1.5,
    digits: 3,
    resolution: 0.01,
  }),
  preset('tachometer', 'Optical tachometer', rpms, { percent: 0.05, digits: 1, resolution: 1 }),
  preset('logged-rpm', 'Rpm from the controller', rpms, { percent: 0.5, resolution: 10 }),
  preset('luggage-scale', 'Luggage scale', kilograms, { percent: 0.5, resolution: 0.01, plusMinus: 0.02 }),
  preset('bathroom-scale', 'Bathroom scale', kilograms, { percent: 0.5, resolution: 0.1, plusMinus: 0.1 }),
  preset('kitchen-scale', 'Kitchen scale', [...kilograms, 'rotorG'], { percent: 0.2, resolution: 0.001 }),
  preset('tape', 'Tape', lengths, { resolution: 1, plusMinus: 0.5 }),
  preset('calliper', 'Calliper', [...lengths, 'sprocketMm'], { resolution: 0.01, plusMinus: 0.03 }),
  preset('tape-metres', 'Long tape', ['metres'], { resolution: 0.01, plusMinus: 0.02 }),
  preset('thermocouple', 'Thermocouple', temperatures, { percent: 0.75, resolution: 0.1, plusMinus: 1 }),
  preset('infrared', 'Infrared thermometer', temperatures, { percent: 2, resolution: 0.1, plusMinus: 2 }),
  preset('stopwatch', 'Stopwatch by hand', ['seconds'], { resolution: 0.01, plusMinus: 0.2 }),
  preset('logger-time', 'Logger’s clock', ['seconds'], { percent: 0.01, resolution: 0.01 }),
  preset('phone-note', 'Phone’s microphone', ['hertz'], { percent: 0.1, resolution: 0.5 }),
  preset('satellite-speed', 'Satellite receiver', ['metresPerSecond'], { resolution: 0.1, plusMinus: 0.1 }),
  preset('counted-turns', 'Turns counted by eye', ['turns'], { plusMinus: 0.1 }),
  preset('charger', 'Charger’s counter', ['dischargedMah'], { percent: 2, resolution: 1 }),
]

function preset(
  id: string,
  label: string,
  reads: readonly string[],
  { percent = 0, digits = 0, resolution = 0, plusMinus = 0 }: Partial<Instrument>,
): InstrumentPreset {
  return { id, label, reads, instrument: { percent, digits, resolution, plusMinus } }
}

/** The presets that can take a reading of this name. */
export function presetsFor(name: string): readonly InstrumentPreset[] {
  return instrumentPresets.filter(({ reads }) => reads.includes(name))
}

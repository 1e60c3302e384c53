import type { TestId } from '../../shared-engine/reference/measurements.ts'

// One afternoon in the workshop for each demo: readings of a scale, a tape, a thermometer and a meter, all invented, for
// every entry that is only guessed; beside them what they come to by hand.

const scale = { percent: 0.5, digits: 1, resolution: 0.05, plusMinus: 0 }
const tape = { percent: 0, digits: 0, resolution: 1, plusMinus: 1 }
const caliper = { percent: 0, digits: 0, resolution: 0.01, plusMinus: 0.02 }
const thermometer = { percent: 0, digits: 0, resolution: 0.1, plusMinus: 0.3 }
const clamp = { percent: 1.5, digits: 2, resolution: 0.1, plusMinus: 0 }
const watch = { percent: 0, digits: 0, resolution: 0.1, plusMinus: 0.3 }

export interface Step {
  /** The guessed entry. */
  readonly guessed: string
  /** The entry that the readings give, and what they come to by hand. */
  readonly path: string
  readonly byHand: number
  readonly test: TestId
  readonly readings: object
}

/** Lengths of a loop hung with weights: so much without, and so much more for each kilogram. */
const hung = (slack: number, perKg: number) =>
  [0, 5, 10, 15, 20, 25].map((kg, at) => ({
    kg,
    lengthMm: slack + perKg * kg + (at % 2 === 0 ? 0.01 : -0.01),
  }))

/** A lump that warms up from the sink's temperature to 60 °C with a time constant of 400 s. */
const warming = (sink: number) =>
  Array.from({ length: 16 }, (_, at) => {
    const [seconds, ripple] = [at * 90, at % 2 === 0 ? 0.1 : -0.1]
    return { seconds, celsius: Number((60 + (sink - 60) * Math.exp(-seconds / 400) + ripple).toFixed(2)) }
  })

export const afternoons: Readonly<Record<string, readonly Step[]>> = {
  'culvert-crawler': [
    {
      guessed: 'ground.turnFriction',
      path: 'ground.turnFriction',
      test: 'turn-friction',
      readings: {
        lists: { pullKg: [4.1, 4.2, 4.0, 4.15, 4.05], armMm: [180] },
        instruments: { pullKg: scale, armMm: tape },
      },
      byHand: (4 * 4.1 * 180) / (15 * 360), // 4 pull arm/(m o L), 13.5 and 1.5 kg
    },
    {
      // Not a guess, but a fifth vague: the pull that a turn takes means little beside a grip that is not known.
      guessed: 'ground.gripCoefficient',
      path: 'ground.gripCoefficient',
      test: 'grip',
      readings: { lists: { pullKg: [9.1, 8.9, 9, 9.05, 8.95] }, instruments: { pullKg: scale } },
      byHand: 9 / 15, // pull/(m o)
    },
    {
      guessed: 'track.sharePercent',
      path: 'track.loopStiffnessN',
      test: 'loop-stiffness',
      readings: { rows: hung(490, 0.04), instruments: { kg: scale, lengthMm: caliper } },
      byHand: (9.80665 * 490) / (0.04 * 2), // g a/(b strands)
    },
  ],
  'hut-hauler': [
    {
      guessed: 'vehicle.loadKg',
      path: 'vehicle.loadKg',
      test: 'load',
      readings: { lists: { kg: [71.5] }, instruments: { kg: scale } },
      byHand: 71.5,
    },
    {
      guessed: 'ground.turnFriction',
      path: 'ground.turnFriction',
      test: 'turn-friction',
      readings: {
        lists: { pullKg: [33, 34, 32.5, 33.5, 33], armMm: [520] },
        instruments: { pullKg: scale, armMm: tape },
      },
      byHand: (4 * 33.2 * 520) / (169.5 * 980), // 98 kg and the load as it was weighed
    },
    {
      guessed: 'motor.thermalResistanceKPerW',
      path: 'motor.thermalResistanceKPerW',
      test: 'warm-up',
      readings: {
        rows: warming(15),
        lists: { sinkCelsius: [15], amps: [72] },
        instruments: { seconds: watch, celsius: thermometer, sinkCelsius: thermometer, amps: clamp },
      },
      byHand: 45 / (72 ** 2 * 0.024 * (1 + 0.00393 * 40)), // (60 − 15) K over I²R at 60 °C
    },
    {
      guessed: 'cooling.radiatorWPerK',
      path: 'cooling.radiatorWPerK',
      test: 'radiator',
      readings: {
        lists: { inCelsius: [33.4, 33.5, 33.3, 33.4], outCelsius: [29, 29.1, 28.9, 29], airCelsius: [12] },
        instruments: { inCelsius: thermometer, outCelsius: thermometer, airCelsius: thermometer },
        // The pump throttled for the test, so that the coolant cools by some kelvin.
        given: { 'cooling.flowLPerMin': { value: 1.25, plusMinus: 0.03, shape: 'normal' } },
      },
      // ρ V̇ c (in − out) over the coolant's mean excess; 50 % glycol of the coolants' table
      byHand: (1071 * (1.25e-3 / 60) * 3300 * 4.4) / (31.2 - 12),
    },
  ],
  'quick-sled-puller': [
    {
      guessed: 'track.knockdownPercent',
      path: 'track.knockdownPercent',
      test: 'tooth-shear',
      readings: { lists: { kg: [12.4, 12.9, 12.1, 12.7, 12.5, 12.6] }, instruments: { kg: scale } },
      // 100 τ/shear: load over the root’s area over the printed strength of the materials’ table, 10.8 MPa
      byHand: (100 * 9.80665 * (75.2 / 6)) / (4 * 7.2) / 10.8,
    },
    {
      guessed: 'track.loopStiffnessN',
      path: 'track.loopStiffnessN',
      test: 'loop-stiffness',
      readings: { rows: hung(980, 0.08), instruments: { kg: scale, lengthMm: caliper } },
      byHand: (9.80665 * 980) / (0.08 * 2),
    },
    {
      guessed: 'ground.gripCoefficient',
      path: 'ground.gripCoefficient',
      test: 'grip',
      readings: { lists: { pullKg: [11.9, 12.4, 12.1, 12.6, 12.2] }, instruments: { pullKg: scale } },
      byHand: 12.24 / (34 * 0.8), // pull/(m o)
    },
  ],
}

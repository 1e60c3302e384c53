import { output, type GuidedTest } from '../kind.ts'

/** Tangent of an angle by its sine; NaN past a right angle. */
export const tangentOfSine = (sine: number): number => sine / Math.sqrt(1 - sine * sine)

/**
 * Height of the centre of mass by lifting the rear: h = h_0 + L (F′ − F)/(m tan θ), sin θ = lift/L.
 *
 * *Source:* balance of moments at an angle, as in ISO 10392.
 */
export const cgLift: GuidedTest = {
  id: 'cg-lift',
  outputs: (bench) => {
    const span = bench.mean('spanMm')
    const lift = bench.mean('liftMm')
    const level = bench.mean('levelFrontKg')
    const raised = bench.mean('raisedFrontKg')
    const mass = bench.entry('vehicle.massKg') + bench.entry('vehicle.loadKg')
    const bars = bench.plain('supportHeightMm')
    const height = bars + (span * (raised - level)) / (mass * tangentOfSine(lift / span))
    return {
      height: output(height, 'h_0 + L * (F_2 - F_1) / (m * tan(asin(l / L)))', {
        h_0: bars,
        L: span,
        F_2: raised,
        F_1: level,
        m: mass,
        l: lift,
      }),
    }
  },
}

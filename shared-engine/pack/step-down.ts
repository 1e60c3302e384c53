/** What decides the volts behind a step-down supply. */
interface Supply {
  readonly volts: number
  readonly peakAmps: number
  /** Ω. */
  readonly outputResistance: number
}

/**
 * Volts left at the loads when all of them ask for their most at once.
 *
 * V min(1, I_peak/I) − min(I, I_peak) R_out: beyond its peak the supply passes no more, and its volts fall with the share
 * that is missing.
 *
 * @param amps I asked for, A
 * @returns V
 * *Source:* Ohm's law; a supply at its limit feeding resistive loads: assumption.
 */
export function voltsLeft({ volts, peakAmps, outputResistance }: Supply, amps: number): number {
  if (!(amps > peakAmps)) return volts - amps * outputResistance
  return (volts * peakAmps) / amps - peakAmps * outputResistance
}

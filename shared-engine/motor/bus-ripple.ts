/**
 * Ripple current that the bus capacitors carry.
 *
 * I_rms = I √(δ (1 − δ)).
 *
 * @param amps I, A of one motor
 * @param duty δ, 0 to 1; worst at one half
 * @returns A RMS
 * *Source:* square-wave current of duty δ, elementary; `docs/model.md` §3.
 * @example rippleAmpsOf(100, 0.5) // 50
 */
export function rippleAmpsOf(amps: number, duty: number): number {
  return amps * Math.sqrt(duty * (1 - duty))
}

/**
 * Peak-to-peak ripple of the bus from its capacitor alone.
 *
 * ΔV = I δ (1 − δ)/(f C).
 *
 * @param amps I, A of one motor
 * @param duty δ, 0 to 1
 * @param frequency f, Hz
 * @param capacitance C, F
 * @returns V
 * *Source:* charge balance of the capacitor over one switching period; `docs/model.md` §3.
 * @example busRippleOf(100, 0.5, 16000, 0.001) // 1.5625
 */
export function busRippleOf(amps: number, duty: number, frequency: number, capacitance: number): number {
  return (amps * duty * (1 - duty)) / (frequency * capacitance)
}

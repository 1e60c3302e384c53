/** How a controller feeds the motor's phases: one pair after the other, or three sines. */
type Commutation = 'block' | 'sine'

/** RMS of one phase for each ampere that flows through the motor, where three share it in sixths of a turn. */
export const phaseShare = Math.sqrt(2 / 3)

/**
 * Ripple current of the bus capacitors for each ampere of the motor.
 *
 * block: √(δ (1 − δ));  sine: √(⅔ · 2 m [√3/(4π) + √3/π − 9 m/16]), m = 2 δ/√3, at a power factor of 1.
 *
 * @param duty δ, 0 to 1
 * @returns A RMS for 1 A
 * *Source:* block: square-wave current of that duty, elementary; sine: Kolar and Round, IEE Proc. EPA 153 (2006), with
 * the phase's RMS √⅔ of the motor's current.
 * @example rippleShare('block', 0.5) // 0.5
 */
export function rippleShare(commutation: Commutation, duty: number): number {
  if (commutation === 'block') return Math.sqrt(duty * (1 - duty))
  const depth = (2 * duty) / Math.sqrt(3)
  const inside = Math.sqrt(3) / (4 * Math.PI) + Math.sqrt(3) / Math.PI - (9 * depth) / 16
  return phaseShare * Math.sqrt(2 * depth * inside)
}

/** Duty at which the ripple is largest: ½, or that of the sine's parabola. */
export const worstDuty: Readonly<Record<Commutation, number>> = { block: 0.5, sine: 5 / (3 * Math.PI) }

/**
 * The duty nearest to a wanted one that a burst passes on its way from standstill to the cap.
 *
 * @param wanted where the ripple is largest
 * @param atRest duty that the burst's current needs at standstill
 * @param cap most duty
 * *Source:* the burst's current needs the duty of standstill at least, and the driver allows the cap at most.
 */
export function dutyNearest(wanted: number, atRest: number, cap: number): number {
  return Math.min(Math.max(wanted, Math.min(atRest, cap)), cap)
}

/**
 * Peak-to-peak ripple of the bus.
 *
 * ΔV = I [δ (1 − δ)/(f C) + ESR].
 *
 * @param amps I, A of one motor
 * @param duty δ, 0 to 1
 * @param frequency f, Hz
 * @param capacitance C, F
 * @param seriesResistance ESR, Ω
 * @returns V
 * *Source:* charge balance of the capacitors over one switching period, and the step at their resistance.
 * @example busRippleOf(100, 0.5, 16000, 0.001, 0) // 1.5625
 */
export function busRippleOf(
  amps: number,
  duty: number,
  frequency: number,
  capacitance: number,
  seriesResistance: number,
): number {
  return amps * ((duty * (1 - duty)) / (frequency * capacitance) + seriesResistance)
}

/**
 * Peak-to-peak ripple of the motor's current.
 *
 * ΔI = V δ (1 − δ)/(L f).
 *
 * @param volts V, of the full pack
 * @param inductance L, H, terminal to terminal
 * @returns A
 * *Source:* volt-second balance of an inductance over one switching period.
 * @example motorRippleOf(24, 0.5, 16000, 0.0001) // 3.75
 */
export function motorRippleOf(volts: number, duty: number, frequency: number, inductance: number): number {
  return (volts * duty * (1 - duty)) / (inductance * frequency)
}

/**
 * Current that constant-power consumers draw from a resting pack.
 *
 * I_a = 2 P_a / (V_oc + √(V_oc² − 4 R_b P_a)): the smaller root of (V_oc − I R_b) I = P_a.
 *
 * @param power P_a, W at the pack, ≥ 0
 * @param openVolts V_oc, V, resting
 * @param resistance R_b, Ω, pack and wiring
 * @returns A; NaN where the pack cannot feed them (4 R_b P_a > V_oc²), which the build's rules refuse
 * *Source:* Kirchhoff's laws; held constant while driving: `docs/model.md` §2, assumption.
 * @example accessoryAmpsOf(100, 20, 0.1) // 5.13
 */
export function accessoryAmpsOf(power: number, openVolts: number, resistance: number): number {
  if (power === 0) return 0
  return (2 * power) / (openVolts + Math.sqrt(openVolts * openVolts - 4 * resistance * power))
}

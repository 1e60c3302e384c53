/** How far two sound implementations of the contract may differ, and why. */
interface Closeness {
  readonly relative: number
  readonly absolute: number
  readonly reason: string
}

const closedForm: Closeness = { relative: 1e-9, absolute: 0, reason: 'closed form: rounding alone' }
const rootOrIntegral: Closeness = {
  relative: 1e-6,
  absolute: 0,
  reason: 'depends on the equilibrium, a throttle, a cruise or an integral: found to a tolerance',
}
const slip: Closeness = { relative: 0, absolute: 1e-9, reason: 'slip may be 0, where a relative tolerance says nothing' }
const temperature: Closeness = { relative: 0, absolute: 1e-6, reason: 'zero of the Celsius scale is arbitrary' }

const roots = [
  'throttleForRatedRpmPercent',
  'frontLiftThrottlePercent',
  'topSpeedMps',
  'topBeltSpeedMps',
  'topMotorRpm',
  'topMotorAmps',
  'topPackAmps',
  'topPackVolts',
  'topMotorEfficiency',
  'topOverallEfficiency',
  'secondsToHalfTop',
  'secondsTo80Top',
  'metresTo80Top',
  'secondsToMotorLimit',
  'coolantRiseK',
  'busRippleVolts',
  'cruiseHalfTopPackAmps',
  'cruiseHalfTopMinutes',
  'cruiseHalfTopKilometres',
  'jamForceN',
  'jamBreakForceN',
  'jamBreakBeltSpeedMps',
  'limiterHoldsNm',
]

/** The limit whose case says whether a worst-case figure was read at the equilibrium. */
const worstCaseOf: Readonly<Record<string, string>> = {
  toothForceN: 'track.tooth-shear',
  toothShearPa: 'track.tooth-shear',
  toothBendingPa: 'track.tooth-bending',
  toothBearingPa: 'track.tooth-bearing',
  loopTensionN: 'track.tension',
}

const casesWithRoots: ReadonlySet<string> = new Set(['top', 'run', 'steady', 'stop'])

/** Difference of near equals: held to 1e-12 of the larger term where that is wider. Here, that term for a figure. */
const largerTerms: Readonly<Record<string, (figures: Readonly<Record<string, number | null>>) => number>> = {
  startThrustN: ({ launchSprocketTorqueNm, advancePerMotorTurnM, ratio }) =>
    ((launchSprocketTorqueNm ?? 0) * 2 * Math.PI) / ((advancePerMotorTurnM ?? 1) * (ratio ?? 1)),
  freeRpm: ({ ruleOfThumbRpm }) => ruleOfThumbRpm ?? 0,
  electricalRpm: ({ electricalRpm }) => electricalRpm ?? 0,
  peakAccelerationMps2: ({ startThrustN, equivalentMassKg }) => (startThrustN ?? 0) / (equivalentMassKg ?? 1),
}

export interface GoldenLimit {
  readonly id: string
  readonly actual?: number | null
  readonly allowed: number | null
  readonly unit: string
  readonly margin: number | null
  readonly standing: string
  readonly case: string
}

export interface Golden {
  readonly figures: Readonly<Record<string, number | null>>
  readonly limits: readonly GoldenLimit[]
}

/** How close a figure has to be in a golden build. */
export function closenessOfFigure(name: string, golden: Golden): Closeness {
  if (name === 'topSlip') return slip
  if (name === 'steadyMotorC' || name === 'steadyControllerC') return temperature
  if (roots.includes(name)) return rootOrIntegral
  const worst = golden.limits.find((limit) => limit.id === worstCaseOf[name])
  const base = name in worstCaseOf && (worst === undefined || casesWithRoots.has(worst.case)) ? rootOrIntegral : closedForm
  return { ...base, absolute: 1e-12 * Math.abs(largerTerms[name]?.(golden.figures) ?? 0) }
}

/** How close actual and allowed of a limit have to be. */
export function closenessOfLimit(limit: GoldenLimit): Closeness {
  if (limit.unit === 'degC') return temperature
  return casesWithRoots.has(limit.case) ? rootOrIntegral : closedForm
}

/** How close its margin has to be: twice the closeness of a quotient, of the larger of its two terms, 1 and the quotient. */
export function closenessOfMargin(limit: GoldenLimit): Closeness {
  const relative = casesWithRoots.has(limit.case) ? 1e-6 : 1e-9
  const quotient = Math.max(1, Math.abs(1 - (limit.margin ?? 0)))
  return { relative: 0, absolute: 2 * relative * quotient, reason: 'one less a quotient of two of the above' }
}

/** Whether a number is as close as it has to be; `null` only to `null`. */
export function isClose(found: number | null | undefined, owed: number | null | undefined, closeness: Closeness): boolean {
  if (owed === null || owed === undefined || found === null || found === undefined) return (found ?? null) === (owed ?? null)
  return Math.abs(found - owed) <= closeness.absolute + closeness.relative * Math.abs(owed)
}

import { caseNumber } from './case.ts'

/** Most reductions that a build may hold. *Source:* `docs/model.md` §1. */
export const mostStages = 6

/** Cases in which reductions, shafts and joints are loaded: places in the arrays of a duty. */
export const dutyCase = { launch: 0, grip: 1, top: 2, stop: 3, stopFree: 4 } as const

/** The `caseNumber` of each. */
export const dutyCaseNumbers = [
  caseNumber.launch,
  caseNumber.grip,
  caseNumber.top,
  caseNumber.stop,
  caseNumber['stop-free'],
] as const

/** Cases of each group of limits. */
export const holdingCases = [dutyCase.launch, dutyCase.grip, dutyCase.top] as const
export const lastingCases = [dutyCase.grip, dutyCase.top] as const
export const mishapCases = [dutyCase.stop, dutyCase.stopFree] as const

/** How many cases there are. */
export const dutyCases = 5

/** What one reduction bears in each case, service factor included but in a stop; NaN where a case does not arise. */
export class StageDuty {
  /** N·m into the stage and of its driven shaft, by `dutyCase`. */
  readonly into = new Float64Array(dutyCases)
  readonly out = new Float64Array(dutyCases)
  /** rad/s of the driver and of the driven shaft at top speed. */
  topSpeed = NaN
  topDrivenSpeed = NaN
  /** N·m of the driven shaft in `grip` if no limiter slipped, and at top speed; no service factor. */
  gripUncapped = NaN
  topUnfactored = NaN
}

/** What one shaft with its wheel bears. */
export class ShaftDuty {
  /** N·m, and N across it, by `dutyCase`. */
  readonly torque = new Float64Array(dutyCases)
  readonly pull = new Float64Array(dutyCases)
  /** N across it at top speed, no service factor; rad/s. */
  topPull = NaN
  topSpeed = NaN
}

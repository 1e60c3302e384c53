/** What version 2 of the model computes in another way than these builds of version 1 were made for, by name, with the reason. */
type Amended = Readonly<Record<string, string>>

const pattern = 'the load over a run (a share of the current at top speed) is replaced by the drive pattern'

/** Figures that owe other values now, or none. */
export const amendedFigures: Amended = {
  steadyMotorC: pattern,
  steadyControllerC: pattern,
  coolantRiseK: pattern,
  secondsToMotorLimit: pattern,
}

/** Figures that version 1 did not have. */
export const newFigures: Amended = {}

/** Limits that owe other values now, or are gone. */
export const amendedLimits: Amended = {
  'motor.current-continuous': pattern,
  'controller.current-continuous': pattern,
  'pack.current-continuous': pattern,
  'motor.temperature': pattern,
  'controller.temperature': pattern,
}

/** Limits that version 1 did not have; a number is written n. */
export const newLimits: Amended = {}

/** The id of a limit with the number of its reduction or wire as n. */
export function withoutNumber(id: string): string {
  return id.replace(/\.\d+\./, '.n.')
}

import type { LimitId } from '../../../shared-engine/limits/id.ts'
import { limitOf } from '../../../shared-engine/index.ts'
import type { DriveRun } from '../../../shared-engine/drive/result.ts'

/** A bound that the drive passed; by its RMS current where there is no moment. */
interface Passed {
  readonly id: string
  readonly label: string
  readonly at: number | null
}

/** Every bound that was passed, first moment first. */
export function passedOf({ watched, overContinuous }: DriveRun): readonly Passed[] {
  const label = (id: LimitId) => limitOf(id)?.label ?? id
  const moments = watched
    .filter(({ passedAt }) => passedAt !== null)
    .toSorted((one, other) => (one.passedAt ?? 0) - (other.passedAt ?? 0))
  return [
    ...moments.map(({ id, passedAt }) => ({ id, label: label(id), at: passedAt })),
    ...overContinuous.map((id) => ({ id, label: label(id), at: null })),
  ]
}

import type { Machine } from '../machine/parts.ts'
import { Footing, setFooting } from '../ground/footing.ts'
import { bracketedRoot } from '../numeric/root.ts'
import { curveSettingOf } from './curve-setting.ts'
import { motorThrustAt } from './thrust-line.ts'

/**
 * Steepest grade on which the machine still starts from rest.
 *
 * min(F_m(0), F_max(θ)) = R(0, θ).
 *
 * @returns rise over run, at most 10; null where it does not start on the level, or on any grade up to that
 * *Source:* `docs/model.md` §5, solved for the grade. Tipping over backwards is another limit: front lift.
 */
export function steepestGrade(machine: Machine): { grade: number; heldBy: 'motor' | 'grip' } | null {
  const setting = curveSettingOf(machine)
  const restThrust = motorThrustAt(setting.line, 0)
  const footing = new Footing()
  const surplus = (grade: number): number => {
    const cosine = 1 / Math.sqrt(1 + grade * grade)
    setFooting(footing, machine, grade * cosine, cosine)
    return Math.min(restThrust, footing.gripThrust) - footing.standingResistance
  }
  if (surplus(0) <= 0 || surplus(10) >= 0) return null
  const grade = bracketedRoot(surplus, 0, 10)
  if (grade === null) return null
  surplus(grade)
  return { grade, heldBy: footing.gripThrust < restThrust ? 'grip' : 'motor' }
}

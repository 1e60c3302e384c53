import { caseWords } from '../cases/case.ts'
import type { Checked } from '../check.ts'
import { againstRated, holdsBack } from '../explain/holds-back.ts'
import type { LimitRow } from '../limits/ledger.ts'
import type { Standing } from '../limits/limit.ts'
import { marginWords, timesOver } from '../limits/margin-words.ts'
import { limitOf } from '../limits/table.ts'
import { worstRow } from '../limits/worst.ts'
import { formatText } from '../units/display.ts'
import type { UnitSystem } from '../units/kinds.ts'
import { cruiseCurve } from '../vehicle/cruise-curve.ts'

/** How many limits stand where, and the worst of them: what a person wants to know first. */
export function countsAnswer(limits: readonly LimitRow[]): string {
  const count = (standing: Standing) => limits.filter((limit) => limit.standing === standing).length
  const worst = worstRow(limits)
  if (worst === undefined) return 'No limit can be checked with these entries.'
  const { label = worst.id, sense } = limitOf(worst.id) ?? {}
  const counts = `${count('over')} over, ${count('near')} near, ${count('within')} within of ${limits.length} limits.`
  return `${counts} Worst: ${label}${worst.margin === null ? '' : `, ${marginWords(worst.margin, sense)}`}.`
}

/** "38.2 km/h at 31,400 rpm, 12 % below the rated limit; limited by grip." */
export function fastAnswer(checked: Checked, system: UnitSystem): string {
  const { topSpeedMps, topMotorRpm, startThrustN, gripThrustN, groundResistanceN } = checked.figures
  if (topSpeedMps === null) {
    const [pull, grip, held] = [startThrustN, gripThrustN, groundResistanceN].map((force) =>
      formatText(force, 'force', system),
    )
    return `It does not move off: ${pull} of pull and ${grip} of grip against ${held} that hold it back.`
  }
  const speed = formatText(topSpeedMps, 'speed', system)
  const rpm = formatText(topMotorRpm, 'rpm', system)
  return `${speed} at ${rpm}, ${againstRated(checked)}; ${holdsBack(checked)}.`
}

/** The weakest link of what holds mechanically. */
export function holdAnswer({ limits }: Checked, system: UnitSystem): string {
  const weakest = worstRow(limits.filter((row) => limitOf(row.id)?.question === 'hold'))
  const limit = weakest === undefined ? undefined : limitOf(weakest.id)
  if (weakest === undefined || limit === undefined)
    return 'Nothing can be held against a limit yet: enter the drive tooth, the loop’s breaking tension or the reductions’ materials.'
  const { margin } = weakest
  // "12 % over" becomes "12 % over what it bears": a sentence names what is compared.
  const named = margin !== null && margin < 0 && timesOver(margin) === null
  const compared = named ? ` ${limit.sense === 'minimum' ? 'of what it needs' : 'what it bears'}` : ''
  const standing =
    margin === null
      ? 'more than can be allowed at any strength'
      : `${marginWords(margin, limit.sense)}${compared}`
  const least =
    margin !== null && margin >= 0
      ? 'Of all mechanical checks it has the least in hand, and it holds.'
      : 'Of all mechanical checks it is the worst.'
  const value = formatText(weakest.actual, limit.kind, system)
  return `${limit.label}: ${value}, ${standing}. ${least} The case is ${caseWords[weakest.case]}.`
}

/** Where the winding settles, or when it passes its limit; and how far a charge goes. */
export function hotAnswer(checked: Checked, system: UnitSystem): string {
  const { best } = cruiseCurve(checked.machine)
  const winding = windingAnswer(checked, system)
  if (best === null) return winding
  const [speed, metres] = [
    formatText(best.speed, 'speed', system),
    formatText(best.metres, 'distance', system),
  ]
  return `${winding} A charge goes furthest at ${speed}: ${metres} to the reserve.`
}

function windingAnswer({ figures, limits, machine }: Checked, system: UnitSystem): string {
  const { steadyMotorC, secondsToMotorLimit: seconds } = figures
  if (limits.every(({ id }) => id !== 'motor.temperature'))
    return 'How hot is not known: the motor’s thermal resistance would tell.'
  const after = seconds === null ? '' : formatText(seconds, 'time', system)
  if (steadyMotorC === null)
    return `The winding never settles: it heats faster than it can shed${after === '' ? '' : `, and passes its limit after ${after}`}.`
  const gap = machine.motor.maxTemperature - steadyMotorC
  const apart = formatText(Math.abs(gap), 'temperatureDifference', system)
  const passed = gap < 0 && after !== '' ? `, which it passes after ${after}` : ''
  return `The winding settles at ${formatText(steadyMotorC, 'temperature', system)}, ${apart} ${gap < 0 ? 'above' : 'below'} its limit${passed}.`
}

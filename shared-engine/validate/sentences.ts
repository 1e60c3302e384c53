import { benchUnitOf, fieldOf } from '../entries/fields.ts'
import { formatText } from '../units/display.ts'
import type { QuantityKind, UnitSystem } from '../units/kinds.ts'
import type { JudgedQuantity, RegimeId } from './judge.ts'
import type { QuantityId } from './quantity.ts'
import type { Validation, ValidationNote } from './validate.ts'

/** What a quantity is called, and its kind. */
export const quantityWords: Readonly<
  Record<QuantityId, { readonly label: string; readonly kind: QuantityKind }>
> = {
  speed: { label: 'Belt speed by the rpm', kind: 'speed' },
  groundSpeed: { label: 'Speed over ground', kind: 'speed' },
  amps: { label: 'Current of one motor', kind: 'amps' },
  temperature: { label: 'Motor temperature', kind: 'temperature' },
}

const regimeWords: Readonly<Record<RegimeId, string>> = {
  slow: 'at the slowest third of speeds',
  middling: 'at middling speeds',
  fast: 'at the fastest third of speeds',
  early: 'in the first half',
  late: 'in the second half',
}

const percent = (share: number) => `${Math.round(100 * share)}\u202F%`

/** A difference in the unit of its quantity: of temperatures too. */
const difference = (value: number, id: QuantityId, system: UnitSystem) =>
  formatText(Math.abs(value), id === 'temperature' ? 'temperatureDifference' : quantityWords[id].kind, system)

const sideOf = (value: number) => (value > 0 ? 'too high' : 'too low')

/** How one quantity agrees, in sentences: on average, where it is off, and what would explain it. */
export function quantitySentences(found: JudgedQuantity, system: UnitSystem): readonly string[] {
  const { id, meanError, meanAllowed, measuredMean, withinShare, verdict, worst, furthest } = found
  const { label, kind } = quantityWords[id]
  const allowed = `tolerances and sensors allow ${difference(meanAllowed, id, system)}`
  const within = `${percent(withinShare)} of the samples lie within the band.`
  const part = id === 'temperature' ? '' : ` (${percent(Math.abs(meanError) / Math.abs(measuredMean))})`
  const head =
    verdict === 'agrees'
      ? `${label}: agrees. On average predicted ${difference(meanError, id, system)} ${sideOf(meanError)}; ${allowed}; ${within}`
      : `${label}: off. On average predicted ${difference(meanError, id, system)}${part} ${sideOf(meanError)}; ${allowed}; ${within}`
  if (verdict === 'agrees') return [head]
  const where =
    worst === null
      ? []
      : [
          `Most ${regimeWords[worst.id]}: ${difference(worst.meanError, id, system)} ${sideOf(worst.meanError)}, ${formatText(worst.predictedMean, kind, system)} predicted and ${formatText(worst.measuredMean, kind, system)} measured.`,
        ]
  const at = `${furthest.seconds.toFixed(1)}\u202Fs${furthest.segment > 0 ? ` of segment ${furthest.segment + 1}` : ''}`
  const far = `Furthest from its band at ${at}: ${formatText(furthest.predicted, kind, system)} predicted, ${formatText(furthest.measured, kind, system)} measured.`
  return [head, ...where, far]
}

/** What would explain what is off, a sentence for each group of quantities; entries named are not told apart here. */
export function causeSentences({ causes }: Validation): readonly string[] {
  return causes.map(({ about, explanations }) => {
    const what = about.map((id) => quantityWords[id].label.toLowerCase()).join(', ')
    if (explanations.length === 0) return `No single entry would explain it (${what}).`
    const said = explanations.map(({ path, change, share }) => {
      const field = fieldOf(path)
      const size = Math.abs(change).toPrecision(2)
      const unit = field === undefined ? '' : benchUnitOf(field)
      return `${field?.label ?? path} ${change > 0 ? 'higher' : 'lower'} by ${size}${unit === '' ? '' : `\u202F${unit}`} (${percent(share)} of it)`
    })
    return `It would be explained by ${said.join(', or by ')} (${what}): a measurement or a fit tells.`
  })
}

const noteSentences: Readonly<Record<ValidationNote, string>> = {
  'throttle-as-duty':
    'The log has no duty: the throttle stands for it, which a controller’s ramps and limits change.',
  'amps-by-sag':
    'No current was logged: it is worked out from the sag of the volts by the build’s pack resistance, so that it is no independent measurement.',
  'no-duty':
    'The log has no duty: speed is predicted from the current, anew every ten seconds, and the mean current of five seconds from the speeds at its ends, while the motors push.',
  'no-drive': 'The log has neither a duty nor a current beside the rpm: nothing says what drove the machine.',
  'no-heat-entries':
    'The temperature is not predicted: the build lacks the motor’s thermal resistance or its heat capacity.',
  'no-temperature': 'The log has no motor temperature.',
  'no-tolerances':
    'The build’s entries have neither tolerances nor origins: the bands are those of the sensors alone.',
  'left-out': 'Left out: where the track spun, the motors stood under power, or the load had gone.',
}

/** What has to be said beside a comparison, in sentences. */
export function validationNotes({ notes, leftOutSeconds }: Validation): readonly string[] {
  return notes.map((note) =>
    note === 'left-out' ? `${noteSentences[note]} ${leftOutSeconds.toFixed(1)}\u202Fs.` : noteSentences[note],
  )
}

/** The comparison in one sentence. */
export function validationAnswer({ quantities }: Validation): string {
  if (quantities.length === 0) return 'This run says too little to compare the build with.'
  const off = quantities.filter(({ verdict }) => verdict === 'off')
  const names = (some: readonly JudgedQuantity[]) =>
    some.map(({ id }) => quantityWords[id].label.toLowerCase()).join(', ')
  if (off.length === 0) return `The build agrees with this run in ${names(quantities)}.`
  const rest = quantities.filter(({ verdict }) => verdict === 'agrees')
  return `The build is off this run in ${names(off)}${rest.length === 0 ? '' : `; it agrees in ${names(rest)}`}.`
}

/** Units of results as they are written for a person. */
const written: Readonly<Record<string, string>> = {
  '1': '',
  mOhm: 'mΩ',
  degC: '°C',
  'g cm2': 'g·cm²',
  'N s/m': 'N·s/m',
  'N s2/m2': 'N·s²/m²',
}

/** A unit of the tables as a person reads it; empty for plain numbers. */
export function unitText(unit: string): string {
  return written[unit] ?? unit
}

/** A value and its uncertainty as text, both to the same place. */
interface RoundedPair {
  readonly value: string
  readonly plusMinus: string
}

/**
 * A measured value with its uncertainty and unit: “146.2 ± 1.2 rpm/V”. Where nothing is known of the uncertainty that
 * is said, instead of “± 0”; an exact one stands alone.
 *
 * @param exact a count
 */
export function measuredText(
  {
    value,
    plusMinus,
    unit,
  }: { readonly value: number | null; readonly plusMinus: number | null; readonly unit: string },
  exact: boolean,
): string {
  if (value === null || plusMinus === null) return 'none'
  const units = unitText(unit) === '' ? '' : `\u202F${unitText(unit)}`
  if (plusMinus > 0) {
    const text = rounded(value, plusMinus)
    return `${text.value} ± ${text.plusMinus}${units}`
  }
  const text = `${rounded(value, 0).value.replace('-', '−')}${units}`
  return exact ? text : `${text}, how sure is not known`
}

/** Digits of a value of which no uncertainty is known: more than a reading has, fewer than arithmetic leaves. */
const fewDigits = 6

/**
 * A value to the place of the second digit of its uncertainty.
 *
 * @param value, plusMinus in the same unit; of an uncertainty of 0 nothing is known: six digits are shown
 * *Source:* ISO/IEC Guide 98-3 (JCGM 100:2008), 7.2.6: two digits of the uncertainty at most.
 * @example rounded(146.228, 1.1751) // { value: '146.2', plusMinus: '1.2' }
 */
export function rounded(value: number, plusMinus: number): RoundedPair {
  if (!(plusMinus > 0)) return { value: String(Number(value.toPrecision(fewDigits))), plusMinus: '0' }
  const digits = plusMinus.toExponential(1)
  const place = 1 - Number(digits.slice(digits.indexOf('e') + 1))
  const width = Number(digits)
  if (place >= 0 && place <= 20) return { value: plain(value, place), plusMinus: width.toFixed(place) }
  const step = 10 ** -place
  return { value: plain(Math.round(value / step) * step, 0), plusMinus: String(width) }
}

/** Fixed places, and no minus before a zero. */
function plain(value: number, places: number): string {
  const text = value.toFixed(places)
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−')
}

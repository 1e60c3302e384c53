import type { Shown } from '../../shared-engine/units/display.ts'

/** A number and its unit as TeX, upright and with a thin space. */
export function valueTex({ text, unit }: Shown): string {
  const number = text
    .replaceAll(',', '{,}')
    .replace('−', '-')
    .replace('–', '\\text{–}')
    .replace(/ × 10([⁻⁰¹²³⁴-⁹]+)/, (_, power: string) => `\\cdot 10^{${plainDigits(power)}}`)
  return unit === '' ? number : `${number}\\,\\text{${unit.replaceAll('%', '\\%')}}`
}

const raised = '⁰¹²³⁴⁵⁶⁷⁸⁹'

function plainDigits(power: string): string {
  return [...power].map((sign) => (sign === '⁻' ? '-' : String(raised.indexOf(sign)))).join('')
}

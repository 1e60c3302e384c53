import { kilo, minutesPerHour, secondsPerDay, secondsPerHour, secondsPerMinute } from '../../units/factors.ts'

/** What a cell says of time: a time of day, a date with a time, or a date alone. */
export type TimeForm = 'clock' | 'moment' | 'day'

/** A time as it stands in a cell. */
interface WrittenTime {
  readonly form: TimeForm
  /** s since midnight, or since 1970-01-01 00:00 UTC where a date is there; without a zone the date counts as UTC. */
  readonly seconds: number
}

const clockShape = /^(?:(\d{1,3}):)?(\d{1,2}):(\d{1,2})(?:[.,:](\d+))?(?:\s*([ap])\.?m\.?)?$/i
const dayShape = /^(\d{1,4})([-/.])(\d{1,2})\2(\d{1,4})\.?(?:(?:\s*[Tt]\s*|,?\s+)(\S.*))?$/
const zoneShape = /^(.*?)\s*(?:(z|utc)|([+\-\u2212])(\d{2}):?(\d{2})?)$/i

/**
 * Reads a time: `h:m:s` with a fraction and am or pm, `m:s`, a date with a time and a zone, or a date alone.
 *
 * Dates are y-m-d or d-m-y, parted by `-`, `/` or `.`; m-d-y where the month would be above 12.
 *
 * @param cell trimmed
 * @returns null where it is none
 * *Source:* ISO 8601-1 for date, time and zone; the other orders: common practice, no source.
 */
export function readTime(cell: string): WrittenTime | null {
  const length = cell.length
  if (length < 4 || length > 48) return null
  const first = cell.charCodeAt(0)
  if (first < 48 || first > 57) return null
  const colon = cell.indexOf(':')
  if (colon > 0 && colon <= 3) {
    const seconds = clockSeconds(cell)
    return seconds === null ? null : { form: 'clock', seconds }
  }
  return readDate(cell)
}

function clockSeconds(text: string): number | null {
  const found = clockShape.exec(text)
  if (found === null) return null
  const [, hour = '0', minute = '0', second = '0', fraction, half] = found
  let hours = Number(hour)
  if (Number(minute) > 59 || Number(second) > 60) return null
  if (half !== undefined) {
    if (hours < 1 || hours > 12) return null
    hours = (hours % 12) + (half.toLowerCase() === 'p' ? 12 : 0)
  }
  const seconds = fraction === undefined ? Number(second) : Number(`${second}.${fraction}`)
  return hours * secondsPerHour + Number(minute) * secondsPerMinute + seconds
}

function readDate(cell: string): WrittenTime | null {
  const found = dayShape.exec(cell)
  if (found === null) return null
  const [, one = '', , two = '', three = '', rest] = found
  const day = daySeconds(one, two, three)
  if (day === null) return null
  if (rest === undefined) return { form: 'day', seconds: day }
  const zoned = zoneShape.exec(rest)
  const clock = clockSeconds(zoned?.[1] ?? rest) ?? hourAndMinute(zoned?.[1] ?? rest)
  if (clock === null) return null
  return { form: 'moment', seconds: day + clock - zoneSeconds(zoned) }
}

/** `hh:mm` behind a date is no `m:s`. */
function hourAndMinute(text: string): number | null {
  const found = /^(\d{1,2})$/.exec(text)
  return found === null ? null : Number(found[1]) * secondsPerHour
}

function zoneSeconds(zoned: RegExpExecArray | null): number {
  if (zoned === null || zoned[3] === undefined) return 0
  const size = Number(zoned[4]) * secondsPerHour + Number(zoned[5] ?? '0') * secondsPerMinute
  return zoned[3] === '+' ? size : -size
}

function daySeconds(one: string, two: string, three: string): number | null {
  if (one.length === 4 || one.length === 3) return daysOf(Number(one), Number(two), Number(three))
  const year = three.length <= 2 ? 2000 + Number(three) : Number(three)
  const month = Number(two)
  return month > 12 ? daysOf(year, Number(one), month) : daysOf(year, month, Number(one))
}

const daysInMonth = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const

/**
 * Seconds from 1970-01-01 to a day of the Gregorian calendar; null where there is no such day.
 *
 * *Source:* the day count of a proleptic Gregorian date with the year begun in March, any calendar text; Fliegel and van
 * Flandern, Communications of the ACM 11 (1968), do the same for Julian days.
 */
function daysOf(year: number, month: number, day: number): number | null {
  const most = daysInMonth[month - 1]
  if (most === undefined || day < 1 || day > most) return null
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0)
  if (month === 2 && day === 29 && !leap) return null
  const marchYear = month <= 2 ? year - 1 : year
  const era = Math.floor(marchYear / 400)
  const ofEra = marchYear - era * 400
  const ofYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1
  const days = ofEra * 365 + Math.floor(ofEra / 4) - Math.floor(ofEra / 100) + ofYear
  return (era * 146_097 + days - 719_468) * secondsPerDay
}

/**
 * A moment as ISO 8601 writes it, to the millisecond.
 *
 * @param seconds since 1970-01-01 00:00
 * @example momentText(0) // '1970-01-01T00:00:00.000'
 */
export function momentText(seconds: number): string {
  const [second, day] = [kilo, kilo * secondsPerDay]
  const milliseconds = Math.round(seconds * second)
  const days = Math.floor(milliseconds / day)
  const rest = milliseconds - days * day
  const whole = Math.floor(rest / second)
  const minutes = Math.floor(whole / secondsPerMinute)
  const two = (value: number, width = 2) => String(value).padStart(width, '0')
  const clock = `${two(Math.floor(minutes / minutesPerHour))}:${two(minutes % minutesPerHour)}:${two(whole % secondsPerMinute)}.${two(rest % second, 3)}`
  return `${dayText(days)}T${clock}`
}

/** The day a number of days after 1970-01-01, `yyyy-mm-dd`. *Source:* the inverse of the count above. */
function dayText(days: number): string {
  const shifted = days + 719_468
  const era = Math.floor(shifted / 146_097)
  const ofEra = shifted - era * 146_097
  const yearOfEra = Math.floor(
    (ofEra - Math.floor(ofEra / 1_460) + Math.floor(ofEra / 36_524) - Math.floor(ofEra / 146_096)) / 365,
  )
  const ofYear = ofEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100))
  const march = Math.floor((5 * ofYear + 2) / 153)
  const day = ofYear - Math.floor((153 * march + 2) / 5) + 1
  const month = march < 10 ? march + 3 : march - 9
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0)
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`
}

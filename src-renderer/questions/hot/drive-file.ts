import { fromEngine } from '../../../shared-engine/index.ts'
import { patternFormat, patternVersion } from '../../../shared-engine/drive/read.ts'
import type { Pattern, PatternRow } from '../../../shared-engine/drive/drive.ts'

/** A number without the rounding that units leave behind. */
const clean = (value: number) => Number(value.toPrecision(12))

/** A pattern as its file holds it; the reader says whether it may be. */
export function storedPatternOf({ name, notes, rows }: Pattern) {
  return { format: patternFormat, version: patternVersion, name, notes, rows: rows.map(storedRowOf) }
}

function storedRowOf({ seconds, ask, grade }: PatternRow) {
  return {
    seconds: clean(seconds),
    ...('speed' in ask
      ? { speedKmh: clean(fromEngine(ask.speed, 'speed', 'km/h')) }
      : { throttlePercent: clean(fromEngine(ask.throttle, 'fraction', '%')) }),
    ...(grade === null ? {} : { gradePercent: clean(fromEngine(grade, 'fraction', '%')) }),
  }
}

/** The pattern as the text of a file. */
export function patternText(pattern: Pattern): string {
  return `${JSON.stringify(storedPatternOf(pattern), null, 2)}\n`
}

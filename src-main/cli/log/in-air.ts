import type { InAir } from '../../../shared-engine/fit/in-air.ts'
import type { ColumnsChoice } from '../../../shared-engine/log/columns/choice.ts'
import { typedNumber } from '../../../shared-engine/measure/typed.ts'
import type { OptionValues } from '../command.ts'
import type { Io } from '../io.ts'
import { mistake, report } from '../trouble.ts'
import { choiceOf } from './choice.ts'

const allowed = 'seconds such as 12-30, or 2:12-30 in the second segment, parted by commas'

/** What options say of a log that a build is held against. */
export interface ToldOfLog {
  readonly choice: ColumnsChoice
  readonly inAir: readonly InAir[]
}

/** How a log is to be read and which of it was driven in the air; null after what is wrong has been reported. */
export function toldOfLog(options: OptionValues, io: Io): ToldOfLog | null {
  const choice = choiceOf(options, io)
  const inAir = inAirOf(options['inAir'], io)
  return choice === null || inAir === null ? null : { choice, inAir }
}

function inAirOf(typed: string | boolean | undefined, io: Io): readonly InAir[] | null {
  if (typeof typed !== 'string') return []
  const words = typed.split(',').map((word) => word.trim())
  const read = words.map(stretchOf)
  const wrong = words.filter((_, at) => read[at] === null)
  if (wrong.length === 0) return read.filter((one) => one !== null)
  report(
    io,
    'pitchline',
    wrong.map((word) => mistake('option-not-understood', { path: '--in-air', value: `"${word}"`, allowed })),
  )
  return null
}

function stretchOf(word: string): InAir | null {
  const [, segment = '1', first = '', last = ''] = /^(?:(\d+):)?([\d.]+)-([\d.]+)$/.exec(word) ?? []
  const [from, to] = [typedNumber(first), typedNumber(last)]
  if (from === null || to === null || from >= to || Number(segment) < 1) return null
  return { segment: Number(segment) - 1, from, to }
}

import { caution } from '../../../shared-engine/constants.ts'
import { wrapped } from '../../../shared-engine/explain/wrap.ts'
import type { FitAnswer, FittedEntry } from '../../../shared-engine/fit/answer.ts'
import { refusalSentence, roughSentence } from '../../../shared-engine/fit/sentences.ts'
import { rounded, unitText } from '../../../shared-engine/measure/shown.ts'
import { fittedSentence, type FittedChannel } from '../../../shared-engine/validate/fitted.ts'
import { oneLine } from '../../../shared-engine/mistakes/shown.ts'

const width = 80

/** A fit as text for a person: each entry old and new, or the reason why not; how well the model agrees. */
export function fitText(name: string, answer: FitAnswer, channels: readonly FittedChannel[]): string {
  const { entries, blocks, condition, notes } = answer
  const refused = entries.filter(({ verdict }) => verdict === 'refused')
  const offered = entries.filter(({ verdict }) => verdict !== 'refused')
  const head = `${oneLine(name, 160)}: ${offered.length} of ${entries.length} entries told by this log`
  const parts = [
    wrapped(head, width),
    offered.flatMap(offeredLines),
    refused.flatMap(refusedLines),
    correlationLines(answer),
    channels.length === 0
      ? []
      : [
          ...wrapped('The prediction and this run (root of the mean square; after: all values taken)', width),
          ...channels.flatMap((channel) => wrapped(fittedSentence(channel, 'metric'), width, '    ', '  ')),
        ],
    blocks.length === 0
      ? []
      : [
          'How well the model agrees with the log (1: as well as the sensors allow)',
          ...blocks.map(
            ({ name: block, rows, chiSquared, downweighted }) =>
              `  ${block.padEnd(8)} ${chiSquared.toPrecision(3).padStart(8)}  ${rows} rows, ${downweighted} counted less`,
          ),
          `  condition ${condition.toPrecision(3)} (over 100: entries that cannot be told apart)`,
        ],
    notes.flatMap(({ sentence }) => wrapped(sentence, width, '  ')),
    wrapped(caution, width),
  ]
  return `${parts
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`
}

function offeredLines({ path, unit, build, value, plusMinus, verdict }: FittedEntry): readonly string[] {
  if (value === null || plusMinus === null) return []
  const text = rounded(value, plusMinus)
  const before = build === null ? 'nothing' : String(build)
  const units = unitText(unit)
  const line = `${path}: ${before} → ${text.value} ± ${text.plusMinus}${units === '' ? '' : ` ${units}`}`
  return [
    ...wrapped(line, width, '    ', '  '),
    ...(verdict === 'rough' ? wrapped(roughSentence(path), width, '      ', '    ') : []),
  ]
}

function refusedLines({ path, code, with: others, tell }: FittedEntry): readonly string[] {
  if (code === undefined || tell === undefined) return []
  return wrapped(refusalSentence(path, { code, with: others ?? [], tell }), width, '    ', '  ')
}

/** Pairs of offered entries that go together by half or more. */
function correlationLines({ fitted, correlation, entries }: FitAnswer): readonly string[] {
  const offered = new Set(entries.filter(({ verdict }) => verdict !== 'refused').map(({ path }) => path))
  const lines = fitted.flatMap((path, one) =>
    fitted.slice(0, one).flatMap((other, at) => {
      const value = correlation[one]?.[at] ?? 0
      if (Math.abs(value) < 0.5 || !offered.has(path) || !offered.has(other)) return []
      return wrapped(`${value.toFixed(2).replace('-', '−')}  ${other} with ${path}`, width, '         ', '  ')
    }),
  )
  return lines.length === 0 ? [] : ['Values that go together (correlation)', ...lines]
}

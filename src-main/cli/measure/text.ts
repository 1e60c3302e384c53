import { caution } from '../../../shared-engine/constants.ts'
import { fieldOf } from '../../../shared-engine/entries/fields.ts'
import { putIn } from '../../../shared-engine/explain/text.ts'
import { wrapped } from '../../../shared-engine/explain/wrap.ts'
import type { BudgetPart } from '../../../shared-engine/measure/budget.ts'
import type { Output } from '../../../shared-engine/measure/kind.ts'
import type { MeasuredNumber, MeasuredResult, Measurement } from '../../../shared-engine/measure/measure.ts'
import type { Readings } from '../../../shared-engine/measure/readings.ts'
import { measuredText, rounded } from '../../../shared-engine/measure/shown.ts'
import { oneLine } from '../../../shared-engine/mistakes/shown.ts'
import { guideOf } from '../../../shared-engine/reference/measurements.ts'

const width = 80

/** What each kind of part is, in a few words. */
const kinds: Readonly<Record<BudgetPart['kind'], string>> = {
  scatter: 'scatter of the readings',
  fit: 'scatter about the fit',
  gain: 'instrument, percent',
  counts: 'instrument, last digits and offset',
  rounding: 'instrument, step of the display',
  given: 'tolerance of what was given',
}

/** A measurement as text for a person: the way to do it, how the result came about, how far to trust it, what next. */
export function measurementText(readings: Readings, measured: Measurement): string {
  const guide = guideOf(readings.test)
  const numbered = guide.steps.flatMap((step, at) => wrapped(`${at + 1}. ${step}`, width, '     ', '  '))
  const blocks = [
    [
      ...wrapped(guide.title, width),
      ...(readings.name === '' ? [] : wrapped(oneLine(readings.name, 160), width)),
    ],
    ['Steps', ...numbered, ...wrapped(`A trap: ${guide.trap}`, width, '     ', '  ')],
    ['Take care', ...guide.cautions.flatMap((care) => wrapped(care, width, '    ', '  '))],
    ...measured.results.map((result) => resultBlock(result, measured.formulas[result.name])),
    figureBlock(Object.values(measured.figures), measured),
    wrapped(`Source: ${guide.source}.`, width, '  '),
    nextBlock(measured),
    wrapped(caution, width),
  ]
  return `${blocks
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`
}

/** `146.2 ± 1.2 rpm/V` */
function quantityText(one: MeasuredNumber, path = ''): string {
  return measuredText(one, fieldOf(path)?.whole === true).replace('\u202F', ' ')
}

function formulaLines(output: Output | undefined): readonly string[] {
  if (output === undefined) return []
  const { formula, put } = output
  const known = new Map(
    Object.entries(put).map(([symbol, value]) => [symbol, String(Number(value.toPrecision(7)))]),
  )
  const numbers = putIn(formula, known)
  return [
    ...wrapped(`= ${formula}`, width, '      ', '    '),
    ...(numbers === formula ? [] : wrapped(`= ${numbers}`, width, '      ', '    ')),
  ]
}

function resultBlock(result: MeasuredResult, output: Output | undefined): readonly string[] {
  const { path, budget, verdict, coverageFactor, standardUncertainty } = result
  const head = wrapped(`${path} = ${quantityText(result, path)}: ${verdict}`, width, '  ')
  if (coverageFactor === null) return head
  return [
    ...head,
    ...formulaLines(output),
    ...(budget.length === 0
      ? []
      : [`  What makes it uncertain, largest first (times ${coverageFactor.toFixed(2)})`]),
    ...budget.slice(0, 8).map((part) => partLine(part, standardUncertainty ?? 0)),
  ]
}

function partLine({ input, kind, standardUncertainty }: BudgetPart, whole: number): string {
  const share = `${Math.round((100 * standardUncertainty ** 2) / whole ** 2)} %`
  const name = [...input].length > 30 ? `${input.slice(0, 29)}…` : input
  return `    ${name.padEnd(30)} ${kinds[kind].padEnd(36)} ${share.padStart(5)}`.trimEnd()
}

function figureBlock(figures: readonly MeasuredNumber[], { formulas }: Measurement): readonly string[] {
  if (figures.length === 0) return []
  return [
    'Besides',
    ...figures.flatMap((figure) => [
      ...wrapped(`${figure.name} = ${quantityText(figure)}`, width, '    ', '  '),
      ...formulaLines(formulas[figure.name]).slice(0, 1),
    ]),
  ]
}

function nextBlock({ notes, results, origin }: Measurement): readonly string[] {
  const lines = notes.flatMap(({ sentence }) => wrapped(sentence, width, '    ', '  '))
  const offered = results.filter(({ verdict }) => verdict !== 'retake')
  const take = offered.flatMap(({ path, value, plusMinus }) => {
    if (value === null || plusMinus === null) return []
    const text = rounded(value, plusMinus)
    const spread = plusMinus > 0 ? `, tolerance ± ${text.plusMinus} normal` : ''
    return wrapped(`Enter ${path} ${text.value}${spread}, origin ${origin}.`, width, '    ', '  ')
  })
  const again =
    offered.length === results.length
      ? []
      : wrapped('What says retake is not offered: repeat it.', width, '    ', '  ')
  return ['What to do next', ...lines, ...take, ...again]
}

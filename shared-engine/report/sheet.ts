import type { Checked } from '../check.ts'
import { caution, modelVersion } from '../constants.ts'
import { cautionOf } from '../explain/cautions.ts'
import { bestWords } from '../explain/best.ts'
import { orderOf } from '../explain/order.ts'
import { sheetBandWords } from '../explain/sheet-band.ts'
import { workingOf } from '../explain/table.ts'
import { workingText } from '../explain/text.ts'
import { oneLine, printable } from '../mistakes/shown.ts'
import type { Remedies } from '../remedy/remedy.ts'
import type { UnitSystem } from '../units/kinds.ts'
import { alarmBlocks, closeAlarmBlocks } from './alarms.ts'
import { countsAnswer, fastAnswer, holdAnswer, hotAnswer } from './answer.ts'
import { heading, list, run, text, words, type Block, type Section, type Sheet } from './block.ts'
import { entryBlocks, entryRuns } from './entries.ts'
import { figureBlocks, figureRuns } from './figures.ts'
import { closeLimitBlocks, limitBlocks, mishapBlocks, notJudgedBlocks, notJudgedRuns } from './limits.ts'
import { remedyBlocks } from './remedies.ts'
import { drawingOf, fewPlotsOf, plotsOf } from './scenes.ts'
import { figureSubjects } from './subjects.ts'

interface SheetManner {
  readonly system: UnitSystem
  /** Day of printing, as it is to stand there; null: none. The engine has no clock. */
  readonly date: string | null
  /** Whether every figure and limit brings its working, on further pages. */
  readonly workings: boolean
  /** Everything, with every entry and figure in tables, on as many pages as it takes; else one page. */
  readonly whole: boolean
  /** Of the worst limit; null where they were not looked for. */
  readonly remedies: Remedies | null
}

/** Longest name on the sheet. */
const longestName = 160

/** What always holds, whoever drives: the usual cautions of the trade. *Source:* common practice, no source. */
const always = [
  'Loops, chains and gears draw in fingers and clothes: guards on, throttle off and pack unplugged before hands go near.',
  'Try a new gearing on a stand first: throttle capped, nobody in the plane of the loops, eye protection.',
  'Lithium packs are charged under watch, on ground that does not burn, never below freezing, never when punctured or swollen.',
  'Where people ride, and on roads, snow and other people’s ground, local rules decide what may be driven and how.',
]

/**
 * The printable sheet of a build: on one page answer, ledger, what was not judged, what a mishap breaks, remedies, what to
 * order, alarm card, curves, figures, entries with origins and spreads, cautions; or everything in tables on many. Workings
 * follow where they are asked for.
 *
 * Its numbers are those of `check` in the same units.
 */
export function sheetOf(checked: Checked, manner: SheetManner): Sheet {
  const { system, date } = manner
  const filled = (sections: readonly Section[]) => sections.filter(({ blocks }) => blocks.length > 0)
  const workings = manner.workings ? workingBlocks(checked) : []
  return {
    title: oneLine(checked.name, longestName),
    made: [
      `Pitchline, model version ${modelVersion}`,
      `${system} units`,
      ...(date === null ? [] : [oneLine(date, 40)]),
    ].join(' · '),
    page: manner.whole ? [] : filled(pageSections(checked, manner)),
    sections: filled([
      ...(manner.whole ? wholeSections(checked, manner) : []),
      { id: 'workings', heading: 'Workings', blocks: workings },
    ]),
    foot: caution,
  }
}

function remedySection(remedies: Remedies | null): Section {
  return {
    id: 'remedies',
    heading: 'What would hold',
    blocks: remedies === null ? [] : remedyBlocks(remedies),
  }
}

/** The one page, by what is looked for first. */
function pageSections(checked: Checked, { system, remedies }: SheetManner): readonly Section[] {
  return [
    { id: 'answer', heading: 'Answer', blocks: answerTexts(checked, system) },
    { id: 'limits', heading: 'Limits', blocks: closeLimitBlocks(checked, system) },
    { id: 'mishaps', heading: 'What a mishap does', blocks: mishapBlocks(checked, system) },
    remedySection(remedies),
    { id: 'not-judged', heading: 'Not judged', blocks: notJudgedRuns(checked) },
    { id: 'alarms', heading: 'Alarm card', blocks: closeAlarmBlocks(checked, system) },
    { id: 'order', heading: 'What to order', blocks: orderRuns(checked, system) },
    {
      id: 'plots',
      heading: 'Curves',
      blocks: [{ block: 'scenes', scenes: fewPlotsOf(checked, system), wide: true }],
    },
    { id: 'figures', heading: 'Figures', blocks: figureRuns(checked, system) },
    { id: 'entries', heading: 'The build', blocks: entryRuns(checked, system) },
    { id: 'cautions', heading: 'Cautions', blocks: cautionBlocks(checked) },
    { id: 'notes', heading: 'Notes', blocks: checked.notes.length === 0 ? [] : [list(checked.notes)] },
  ]
}

function wholeSections(checked: Checked, { system, remedies }: SheetManner): readonly Section[] {
  return [
    { id: 'answer', heading: 'Answer', blocks: answerBlocks(checked, system) },
    { id: 'limits', heading: 'Limits', blocks: limitBlocks(checked, system) },
    { id: 'mishaps', heading: 'What a mishap does', blocks: mishapBlocks(checked, system) },
    remedySection(remedies),
    { id: 'not-judged', heading: 'Not judged', blocks: notJudgedBlocks(checked) },
    { id: 'order', heading: 'What to order', blocks: orderBlocks(checked, system) },
    { id: 'alarms', heading: 'Alarm card', blocks: alarmBlocks(checked, system) },
    {
      id: 'plots',
      heading: 'Curves',
      blocks: [{ block: 'scenes', scenes: plotsOf(checked, system), wide: false }],
    },
    { id: 'figures', heading: 'Figures', blocks: figureBlocks(checked, system) },
    { id: 'entries', heading: 'Entries', blocks: entryBlocks(checked, system) },
    { id: 'notes', heading: 'Notes', blocks: noteBlocks(checked) },
    { id: 'cautions', heading: 'Cautions', blocks: cautionBlocks(checked) },
  ]
}

function answerTexts(checked: Checked, system: UnitSystem): readonly Block[] {
  const best = bestWords(checked, system)
  return [
    { block: 'answer', text: fastAnswer(checked, system) },
    text(countsAnswer(checked.limits)),
    text(holdAnswer(checked, system)),
    text(hotAnswer(checked, system)),
    ...[best, sheetBandWords(checked, system)].flatMap((words) => (words === '' ? [] : [text(words)])),
  ]
}

function answerBlocks(checked: Checked, system: UnitSystem): readonly Block[] {
  return [
    ...answerTexts(checked, system),
    { block: 'scenes', scenes: [drawingOf(checked, system)], wide: true },
  ]
}

function orderBlocks(checked: Checked, system: UnitSystem): readonly Block[] {
  const rows = orderOf(checked, system).map(({ label, words: said }) => ({ cells: [label, said] }))
  return [{ block: 'table', columns: [words('Part', 28), words('Order', 72)], rows }]
}

function orderRuns(checked: Checked, system: UnitSystem): readonly Block[] {
  return orderOf(checked, system).map(({ label, words: said }) => run(label, `${said}.`))
}

function noteBlocks({ build, notes }: Checked): readonly Block[] {
  const own = printable(build.notes).split(/\r?\n/)
  return [
    ...(build.notes.trim() === '' ? [] : [heading('The builder’s'), { block: 'lines', lines: own } as const]),
    ...(notes.length === 0
      ? []
      : [heading('What the numbers do not count, and what they rest on'), list(notes)]),
  ]
}

/** The usual ones, and those of limits that are over or near. */
function cautionBlocks({ limits }: Checked): readonly Block[] {
  const close = limits
    .filter(({ standing }) => standing !== 'within')
    .flatMap(({ id }) => cautionOf(id) ?? [])
  return [list([...new Set([...always, ...close])]), { block: 'caution', text: caution }]
}

function workingBlocks(checked: Checked): readonly Block[] {
  const figures = figureSubjects.flatMap(([, rows]) => rows.map(({ name }) => name))
  const values: Readonly<Record<string, number | null>> = checked.figures
  const subjects = [
    ...checked.limits.map(({ id }) => id),
    ...figures.filter((name) => (values[name] ?? null) !== null),
  ]
  return subjects.flatMap((subject): Block[] => {
    const working = workingOf(checked, subject)
    return working === null ? [] : [{ block: 'lines', lines: workingText(working).trimEnd().split('\n') }]
  })
}

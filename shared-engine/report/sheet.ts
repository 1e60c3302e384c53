import type { Checked } from '../check.ts'
import { caution, modelVersion } from '../constants.ts'
import { cautionOf } from '../explain/cautions.ts'
import { orderOf } from '../explain/order.ts'
import { workingOf } from '../explain/table.ts'
import { workingText } from '../explain/text.ts'
import { oneLine, printable } from '../mistakes/shown.ts'
import type { UnitSystem } from '../units/kinds.ts'
import { alarmBlocks } from './alarms.ts'
import { bestAnswer, countsAnswer, fastAnswer, holdAnswer, hotAnswer } from './answer.ts'
import { heading, list, text, words, type Block, type Section, type Sheet } from './block.ts'
import { entryBlocks } from './entries.ts'
import { figureBlocks } from './figures.ts'
import { limitBlocks, mishapBlocks, notJudgedBlocks } from './limits.ts'
import { drawingOf, plotsOf } from './scenes.ts'
import { figureSubjects } from './subjects.ts'

interface SheetManner {
  readonly system: UnitSystem
  /** Day of printing, as it is to stand there; null: none. The engine has no clock. */
  readonly date: string | null
  /** Whether every figure and limit brings its working. */
  readonly workings: boolean
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
 * The printable sheet of a build: answer, ledger, what was not judged, what a mishap breaks, what to order, alarm card,
 * plots, figures, entries, cautions, and workings where they are asked for.
 *
 * Its numbers are those of `check` in the same units.
 */
export function sheetOf(checked: Checked, manner: SheetManner): Sheet {
  const { system, date } = manner
  const sections: Section[] = [
    { id: 'answer', heading: 'Answer', blocks: answerBlocks(checked, system) },
    { id: 'limits', heading: 'Limits', blocks: limitBlocks(checked, system) },
    { id: 'mishaps', heading: 'What a mishap does', blocks: mishapBlocks(checked, system) },
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
    { id: 'workings', heading: 'Workings', blocks: manner.workings ? workingBlocks(checked) : [] },
  ]
  return {
    title: oneLine(checked.name, longestName),
    made: [
      `Pitchline, model version ${modelVersion}`,
      `${system} units`,
      ...(date === null ? [] : [oneLine(date, 40)]),
    ].join(' · '),
    sections: sections.filter(({ blocks }) => blocks.length > 0),
    foot: caution,
  }
}

function answerBlocks(checked: Checked, system: UnitSystem): readonly Block[] {
  const best = bestAnswer(checked, system)
  return [
    { block: 'answer', text: fastAnswer(checked, system) },
    text(countsAnswer(checked.limits)),
    text(holdAnswer(checked, system)),
    text(hotAnswer(checked, system)),
    ...(best === '' ? [] : [text(best)]),
    { block: 'scenes', scenes: [drawingOf(checked, system)], wide: true },
  ]
}

function orderBlocks(checked: Checked, system: UnitSystem): readonly Block[] {
  const rows = orderOf(checked, system).map(({ label, words: said }) => ({ cells: [label, said] }))
  return [{ block: 'table', columns: [words('Part', 28), words('Order', 72)], rows }]
}

function noteBlocks({ build, notes }: Checked): readonly Block[] {
  const own = printable(build.notes).split(/\r?\n/)
  return [
    ...(build.notes.trim() === '' ? [] : [heading('The builder’s'), { block: 'lines', lines: own } as const]),
    ...(notes.length === 0 ? [] : [heading('What the numbers leave out or lean on'), list(notes)]),
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

import {
  entryInForce,
  figureOf,
  sentenceOf,
  type Mistake,
  type QuantityKind,
  type StoredBuild,
  type UnitSystem,
} from '../../../shared-engine/index.ts'
import { axisLabelOf, variablePathsOf } from '../../../shared-engine/search/space-axes.ts'
import { quantityOf } from '../../../shared-engine/search/space-measure.ts'
import type { MotorChoice, StoredSpace } from '../../../shared-engine/search/space-schema.ts'
import { fromEngine } from '../../../shared-engine/units/convert.ts'
import { displayUnit } from '../../../shared-engine/units/display.ts'
import { readEntry } from '../../../shared-engine/units/entry.ts'
import { troubleOf } from '../../fields/entry-text.ts'
import { readOwned, readValues, valuesAllowed, valuesText } from './values.ts'

/** One entry that can be varied, as the form holds it. */
export interface VaryRow {
  readonly path: string
  readonly label: string
  readonly on: boolean
  readonly text: string
}

export interface BoundRow {
  readonly figure: string
  readonly side: 'atLeast' | 'atMost'
  readonly text: string
}

export interface AimRow {
  readonly figure: string
  readonly best: 'most' | 'least'
}

/** What is asked of a search, as typed. */
export interface SearchForm {
  readonly rows: readonly VaryRow[]
  readonly owned: string
  /** Tried beside the open build's own. */
  readonly motors: readonly MotorChoice[]
  /** Share kept in hand of every limit: 0 is "nothing over". Null: limits are not held. */
  readonly inHand: number | null
  /** Margins of single limits, from a file. */
  readonly margins: Readonly<Record<string, number | null>>
  readonly bounds: readonly BoundRow[]
  readonly aims: readonly AimRow[]
}

/** What a measure is called and in what it is told; the search has two of its own beside the figures. */
export function measureWords(figure: string): { label: string; kind: QuantityKind } {
  return figureOf(figure) ?? { label: 'Worst margin', kind: 'fraction' }
}

/** Something to find at the first click: drivers as small as can be bought, sprocket round today's, throttle capped. */
function startingRows(stored: StoredBuild): VaryRow[] {
  return variablePathsOf(stored)
    .filter((path) => path !== 'motor')
    .map((path) => ({ path, label: axisLabelOf(path), ...startingValues(stored, path) }))
}

function startingValues(stored: StoredBuild, path: string): { on: boolean; text: string } {
  const now = Number(entryInForce(stored, path) ?? 0)
  if (path.endsWith('.driverTeeth')) return { on: true, text: '9..24' }
  if (path.endsWith('.drivenTeeth')) return { on: false, text: `${Math.max(9, now - 10)}..${now + 10}` }
  if (path === 'track.sprocketTeeth') return { on: true, text: `${Math.max(6, now - 4)}..${now + 4}` }
  if (path === 'pack.series') return { on: false, text: `${Math.max(1, now - 2)}..${now + 2}` }
  if (path === 'controller.throttleCapPercent') return { on: true, text: '60..100 step 5' }
  return {
    on: false,
    text: `${Number((now * 0.7).toPrecision(2))}..${Number((now * 1.3).toPrecision(2))} step 0.5`,
  }
}

export function startingForm(stored: StoredBuild, system: UnitSystem): SearchForm {
  const speed = system === 'metric' ? '40 km/h' : '25 mph'
  return {
    rows: startingRows(stored),
    owned: '',
    motors: [],
    inHand: 0,
    // What wears out is decided by materials and sizes more than by teeth and cells: left open at first.
    margins: { lasts: null },
    bounds: [{ figure: 'topSpeedMps', side: 'atLeast', text: speed }],
    aims: [{ figure: 'toothForceN', best: 'least' }],
  }
}

/** What is wrong with a form, by its part: `vary.<path>`, `owned`, `bound.<place>`. */
type Troubles = Readonly<Record<string, string>>

/** The space that a form asks for, as its file would hold it; what cannot be read is told and left out. */
export function spaceOf(
  form: SearchForm,
  stored: StoredBuild,
  system: UnitSystem,
): { space: StoredSpace; troubles: Troubles } {
  const troubles: Record<string, string> = {}
  const { lists, wrong } = readOwned(form.owned)
  if (wrong.length > 0)
    troubles['owned'] =
      `Cannot be read: ${wrong.join('; ')}. Each line is a name, a colon and teeth: pinions: 12, 15, 18.`
  const vary: StoredSpace['vary'] = {}
  for (const { path, on, text } of form.rows) {
    if (!on) continue
    const values = readValues(text, Object.keys(lists))
    if (values === null) troubles[`vary.${path}`] = `Not understood. Allowed: ${valuesAllowed}.`
    else vary[path] = values
  }
  if (form.motors.length > 0)
    vary['motor'] = [{ name: 'as built', motor: { ...stored.motor } }, ...form.motors]
  const margins = { ...(form.inHand !== null && { '*': form.inHand }), ...form.margins }
  const figures = form.bounds.flatMap(({ figure, side, text }, place) => {
    const { kind } = measureWords(figure)
    const read = readEntry(text, kind, { unit: displayUnit(kind, system) })
    if (read.ok) return [{ figure, [side]: read.value.value }]
    troubles[`bound.${place}`] = troubleOf(read.mistakes)
    return []
  })
  const owned = Object.keys(lists).length > 0 ? { owned: lists } : {}
  const space: StoredSpace = {
    format: 'pitchline-space',
    version: 1,
    ...owned,
    vary,
    hold: { margins, figures },
    aim: [...form.aims],
    keep: 30,
  }
  return { space, troubles }
}

/** A mistake of the engine at the part of the form that it speaks of. */
export function placeOf({ path }: Mistake, paths: readonly string[]): string {
  if (path.startsWith('owned')) return 'owned'
  return paths.map((one) => `vary.${one}`).find((one) => path.startsWith(one)) ?? 'form'
}

/** A mistake of the engine in words for the form: a place in the space by its name, no key of the file. */
export function spaceTrouble(mistake: Mistake): string {
  const path = /^vary\.(.+?)(?:\.(?:from|to|step|values)(?:\.\d+)?|\.\d+)?$/.exec(mistake.path)?.[1]
  const allowed = mistake.allowed.replace(
    /, for ([\w.]+)$/,
    (_, entry: string) => `, for ${axisLabelOf(entry)}`,
  )
  return sentenceOf({ ...mistake, allowed, path: path === undefined ? mistake.path : axisLabelOf(path) })
}

/** A space from a file as the form shows it. */
export function formOf(space: StoredSpace, stored: StoredBuild, system: UnitSystem): SearchForm {
  const { '*': inHand = null, ...margins } = space.hold?.margins ?? {}
  const motors = space.vary['motor']
  return {
    rows: startingRows(stored).map((row) => {
      const given = space.vary[row.path]
      return given === undefined
        ? { ...row, on: false }
        : { ...row, on: true, text: valuesText(given as never) }
    }),
    owned: Object.entries(space.owned ?? {})
      .map(([name, teeth]) => `${name}: ${teeth.join(', ')}`)
      .join('\n'),
    motors: Array.isArray(motors) ? motors.filter((one): one is MotorChoice => typeof one === 'object') : [],
    inHand,
    margins,
    bounds: (space.hold?.figures ?? []).flatMap((bound) =>
      (['atLeast', 'atMost'] as const).flatMap((side) => {
        const typed = bound[side]
        return typed === undefined
          ? []
          : [{ figure: bound.figure, side, text: boundText(typed, bound.figure, system) }]
      }),
    ),
    aims: (Array.isArray(space.aim) ? space.aim : [space.aim]).map(({ figure, best }) => ({ figure, best })),
  }
}

function boundText(typed: string | number, figure: string, system: UnitSystem): string {
  const { kind } = measureWords(figure)
  const read = quantityOf(typed, kind, '')
  if (typeof typed === 'string' || !read.ok) return String(typed)
  const unit = displayUnit(kind, system)
  return `${Number(fromEngine(read.value, kind, unit).toPrecision(6))} ${unit}`.trim()
}

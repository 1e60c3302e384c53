import { isJsonGroup } from '../../shared-engine/entries/json-group.ts'
import { instrumentPresets } from '../../shared-engine/measure/instruments.ts'
import type { Instrument } from '../../shared-engine/measure/readings.ts'
import { recallValue, remember } from '../state/remembered.ts'

/** An instrument of a person's own, kept on this computer for all tests. */
interface OwnInstrument {
  readonly label: string
  /** A reading that it was stated for; it is offered for all that are taken alike. */
  readonly reads: string
  readonly instrument: Instrument
}

/** More would not be found again in a list. */
const most = 40
const longest = 60

const parts = ['percent', 'digits', 'resolution', 'plusMinus'] as const

function ownOf(value: unknown): OwnInstrument | null {
  if (!isJsonGroup(value)) return null
  const { label, reads, instrument } = value
  if (typeof label !== 'string' || label.trim() === '' || typeof reads !== 'string') return null
  if (!isJsonGroup(instrument)) return null
  const numbers = parts.map((part) => instrument[part] ?? 0)
  if (!numbers.every((one): one is number => typeof one === 'number' && one >= 0)) return null
  const [percent = 0, digits = 0, resolution = 0, plusMinus = 0] = numbers
  return { label: label.slice(0, longest), reads, instrument: { percent, digits, resolution, plusMinus } }
}

/** What is kept; what no list of ours has written is left out. */
export function ownInstruments(): readonly OwnInstrument[] {
  const kept = recallValue('instruments')
  return Array.isArray(kept) ? kept.flatMap((one) => ownOf(one) ?? []).slice(0, most) : []
}

const keep = (all: readonly OwnInstrument[]) => remember('instruments', JSON.stringify(all.slice(0, most)))

/** Keeps an instrument; one of the same name for the same kind of reading is replaced. */
export function keepInstrument(own: OwnInstrument): readonly OwnInstrument[] {
  const others = ownInstruments().filter(
    ({ label, reads }) => label !== own.label || !isTakenLike(reads, own.reads),
  )
  const all = [{ ...own, label: own.label.trim().slice(0, longest) }, ...others]
  keep(all)
  return all
}

export function dropInstrument(label: string, reads: string): readonly OwnInstrument[] {
  const left = ownInstruments().filter((one) => one.label !== label || !isTakenLike(one.reads, reads))
  keep(left)
  return left
}

/** Whether one instrument can take both readings: some instrument of the workshop takes both. */
export function isTakenLike(one: string, other: string): boolean {
  return one === other || instrumentPresets.some(({ reads }) => reads.includes(one) && reads.includes(other))
}

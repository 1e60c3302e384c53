import { guideOf } from '../reference/measurements.ts'
import type { NoteCode, Remark } from './kind.ts'
import type { Readings } from './readings.ts'

/** What is said of readings or of a result, for a program and for a person. */
export interface Note {
  readonly code: NoteCode
  readonly about: string
  readonly sentence: string
}

/** Each sentence names what it is about and says what to do. */
const sentences: Readonly<Record<NoteCode, (about: string, readings: Readings) => string>> = {
  few: (about, { test }) =>
    `${about}: too few; this test needs at least ${guideOf(test).least}. Read more and add them.`,
  spread: (about) =>
    `${about}: all readings lie close together, so a line through them could have any slope. Repeat with at least a quarter between the least and the most.`,
  time: (about) =>
    `${about}: has to rise from row to row, and each run needs three rows (two to cool down). Sort the rows, number the runs, or record it again.`,
  sign: (about) =>
    `${about}: these readings give no number. Look for swapped columns, readings of the wrong sign or zero, then repeat.`,
  range: (about) =>
    `${about}: the result is outside what an entry of this kind may be. Look for swapped leads, a wrong unit or a reading that drifted, then repeat.`,
  held: (about) =>
    `${about}: came out past the edge of its range, within its own uncertainty, and is held at the edge. Take it, or repeat with finer readings.`,
  uncertain: (about) =>
    `${about}: the uncertainty is more than half of the value. Improve the largest part of the budget and repeat.`,
  rough: (about) =>
    `${about}: known only to worse than a fifth of its value. Take it for now, and improve the largest part of the budget.`,
  'too-short': (about) =>
    `${about}: it was still warming up when the readings ended. Go on until it rises no more, two time constants or longer.`,
  'not-whole': (about) =>
    `${about}: electrical over mechanical rpm should be a whole number and is not. Check what the controller counts and that the tachometer sees one mark a turn.`,
  'no-instrument': (about) =>
    `${about}: nothing is known of its instrument, so only its scatter counts. Enter percent, digits and resolution from the instrument's manual.`,
  'no-scatter': (about) =>
    `${about}: as many as the fit has unknowns, so nothing shows how far it may be off. Add readings.`,
  once: (about) =>
    `${about}: read once, so nothing shows how it scatters. Read it again, lifting off or setting up anew.`,
  bent: (about) =>
    `${about}: they lie on a curve, not on a line. Something changes on the way: let it settle, drop the extremes, or repeat in another order.`,
  'one-way': (about) =>
    `${about}: coasted one way only, so a slope or wind counts as resistance. Coast back as well and name the direction.`,
  odd: (about) =>
    `${about}: stands apart from the others. It was kept; look for a slip of the pen or a disturbance, and repeat it if in doubt.`,
  'left-out': (about) =>
    `${about}: rows below a fifth of the first rise were left out, since there the thermometer's error decides. Nothing to do.`,
  offset: (about) =>
    `${about}: the line does not pass through zero; there are volts without the cause. Zero the meter, look for a bad contact or a warm joint.`,
  'few-repeats': (about) =>
    `${about}: rests on so few repeats that its uncertainty is itself uncertain. Two or three more would shrink it much.`,
}

/** A remark as a note with its sentence. */
export function noteOf(readings: Readings, { code, about }: Remark): Note {
  return { code, about, sentence: sentences[code](about, readings) }
}

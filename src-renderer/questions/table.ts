import type { Question } from '../state/question.ts'
import * as list from './list.ts'

/** The questions of the window, in the order of their tabs. */
export const questions: readonly Question[] = Object.values<Question>(list).toSorted(
  (one, other) => one.place - other.place,
)

import type { Question } from '../state/question.ts'
import { BenchWork } from './bench-work.svelte.ts'

/** What *From a measurement* keeps while the window lives, as a question lists its states. */
export const benchStates: Pick<Question, 'id' | 'states'> = { id: 'bench', states: [BenchWork] }

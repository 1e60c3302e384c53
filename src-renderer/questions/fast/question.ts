import type { Question } from '../../state/question.ts'
import HowFast from './HowFast.svelte'

export const fast: Question = { id: 'fast', place: 1, label: 'How fast', Answer: HowFast, states: [] }

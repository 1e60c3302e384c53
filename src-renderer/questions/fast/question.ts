import type { Question } from '../../state/question.ts'
import HowFast from './HowFast.svelte'

export const fast: Question = { id: 'fast', label: 'How fast', Answer: HowFast, states: [] }

import type { Question } from '../../state/question.ts'
import SideBySide from './SideBySide.svelte'
import { Side } from './side.svelte.ts'

export const side: Question = {
  id: 'side',
  place: 6,
  label: 'Side by side',
  Answer: SideBySide,
  states: [Side],
}

import type { Question } from '../../state/question.ts'
import WhichGears from './WhichGears.svelte'
import { SearchWork } from './search.svelte.ts'

export const gears: Question = {
  id: 'gears',
  place: 2,
  label: 'Which gears',
  Answer: WhichGears,
  states: [SearchWork],
}

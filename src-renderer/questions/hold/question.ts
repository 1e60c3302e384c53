import type { Question } from '../../state/question.ts'
import WillItHold from './WillItHold.svelte'
import { RemedyWork } from './remedy.svelte.ts'
import { UncertaintyWork } from './uncertainty.svelte.ts'

export const hold: Question = {
  id: 'hold',
  place: 3,
  label: 'Will it hold',
  Answer: WillItHold,
  states: [UncertaintyWork, RemedyWork],
}

import type { Question } from '../../state/question.ts'
import HowHot from './HowHot.svelte'
import { DriveWork } from './drive.svelte.ts'

export const hot: Question = {
  id: 'hot',
  place: 4,
  label: 'How hot, how long',
  Answer: HowHot,
  states: [DriveWork],
}

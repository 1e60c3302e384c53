import type { Question } from '../../state/question.ts'
import WhatHappened from './WhatHappened.svelte'
import { ChangesWork } from './changes.svelte.ts'
import { FitWork } from './fit.svelte.ts'
import { LogWork } from './log.svelte.ts'
import { ValidateWork } from './validate.svelte.ts'

export const log: Question = {
  id: 'log',
  place: 5,
  label: 'What happened',
  Answer: WhatHappened,
  states: [LogWork, FitWork, ValidateWork, ChangesWork],
  dropped: {
    endings: ['.csv', '.txt', '.log', '.tsv'],
    take: (workspace, file) => void workspace.of(LogWork).open(file),
  },
}

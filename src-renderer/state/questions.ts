/**
 * The questions of the window, in the order of their tabs: what a builder asks. A new one is a line here and a
 * component in src-renderer/questions/table.ts.
 */
export const questions = [
  { id: 'fast', label: 'How fast' },
  { id: 'gears', label: 'Which gears' },
  { id: 'hold', label: 'Will it hold' },
  { id: 'hot', label: 'How hot, how long' },
  { id: 'side', label: 'Side by side' },
] as const

export type QuestionId = (typeof questions)[number]['id']

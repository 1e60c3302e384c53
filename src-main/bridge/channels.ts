/**
 * What the page may ask of the desktop program, and the channel of each: the preload script offers exactly these.
 * Without schemas, so that the preload script stays small; contract.ts says what each takes and answers.
 */
export const channels = {
  facts: 'pitchline:facts',
  start: 'pitchline:start',
  open: 'pitchline:open',
  read: 'pitchline:read',
  openDropped: 'pitchline:open-dropped',
  release: 'pitchline:release',
  recent: 'pitchline:recent',
  openRecent: 'pitchline:open-recent',
  clearRecent: 'pitchline:clear-recent',
  save: 'pitchline:save',
  saveAs: 'pitchline:save-as',
  exportFile: 'pitchline:export-file',
  exportPdf: 'pitchline:export-pdf',
  keep: 'pitchline:keep',
  forget: 'pitchline:forget',
  discardRecovered: 'pitchline:discard-recovered',
  show: 'pitchline:show',
  newWindow: 'pitchline:new-window',
  heardClose: 'pitchline:heard-close',
  answerClose: 'pitchline:answer-close',
} as const

/** The one channel of what the window sends the page unasked. */
export const eventChannel = 'pitchline:event'

export type Verb = keyof typeof channels

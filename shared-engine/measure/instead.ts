/** Entries that stand aside once another one is known: what has to be measured in their place. */
const insteadOf: Readonly<Record<string, string>> = {
  // How the teeth share is then worked out from the stiffness of loop and teeth.
  'track.sharePercent': 'track.loopStiffnessN',
}

/** The entry that has to be measured to know another one: mostly itself. */
export function measuredFor(path: string): string {
  return insteadOf[path] ?? path
}

/** Entries that stand aside once a path is measured: guesses in whose place the program then computes. */
export function standingAsideFor(path: string): readonly string[] {
  return Object.entries(insteadOf).flatMap(([aside, instead]) => (instead === path ? [aside] : []))
}

/**
 * What is remembered where: the one table. `build`: in the build's file, and undone with it. `machine`: on this
 * computer, for the next start. `window`: while the window is open, gone with it.
 */
const remembered = {
  entries: { what: 'every entry of the build, its tolerance and its origin', where: 'build' },
  readings: { what: 'readings of guided tests', where: 'build' },
  charge: { what: 'charge, air temperature and ground of the operating strip', where: 'build' },
  units: { what: 'metric or imperial', where: 'machine', key: 'pitchline.units' },
  theme: { what: 'light, dark or as the system', where: 'machine', key: 'pitchline.theme' },
  welcomed: { what: 'that the first-run card was read', where: 'machine', key: 'pitchline.welcomed' },
  singleKeys: { what: 'whether shortcuts of one key are on', where: 'machine', key: 'pitchline.single-keys' },
  instruments: { what: 'instruments of one’s own', where: 'machine', key: 'pitchline.instruments' },
  logColumns: {
    what: 'what was laid down about the columns of logs, by the shape of their headings',
    where: 'machine',
    key: 'pitchline.log-columns',
  },
  question: { what: 'the question shown', where: 'window' },
  part: { what: 'the part whose fields are shown', where: 'window' },
  limit: { what: 'the limit chosen in the ledger', where: 'window' },
  throttle: { what: 'throttle and speed cursor', where: 'window' },
  draws: { what: 'draws and seed of how sure the margins are', where: 'window' },
  drive: { what: 'the drive pattern and its own steps of undo', where: 'window' },
  folded: { what: 'the parts of a view that were folded away', where: 'window' },
  undo: { what: 'the steps of undo and redo', where: 'window' },
} as const satisfies Record<string, Remembered>

type Remembered =
  | { readonly what: string; readonly where: 'build' | 'window' }
  | { readonly what: string; readonly where: 'machine'; readonly key: string }

type OnMachine = {
  [Name in keyof typeof remembered]: (typeof remembered)[Name] extends { where: 'machine' } ? Name : never
}[keyof typeof remembered]

/** Reads one remembered choice; the fallback where it was never made, is not one of the choices or may not be read. */
export function recall<T extends string>(name: OnMachine, choices: readonly T[], fallback: T): T {
  try {
    const found = localStorage.getItem(remembered[name].key)
    return choices.find((choice) => choice === found) ?? fallback
  } catch {
    return fallback // storage may be forbidden: then choices last as long as the window
  }
}

/** Reads something remembered that is more than a choice; undefined where there is nothing that can be read. */
export function recallValue(name: OnMachine): unknown {
  try {
    const found = localStorage.getItem(remembered[name].key)
    return found === null ? undefined : (JSON.parse(found) as unknown)
  } catch {
    return undefined // forbidden, or no JSON
  }
}

export function remember(name: OnMachine, value: string): void {
  try {
    localStorage.setItem(remembered[name].key, value)
  } catch {
    // storage may be forbidden or full: the choice still holds in this window
  }
}

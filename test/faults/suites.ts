/** Folders of `test/engine` that a fault may be caught by, what is quick and what concerns the physics first. */
const parts = ['pack', 'motor', 'stages', 'track', 'ground', 'heat', 'vehicle', 'cases', 'reference']

/** What stands above the physics. */
const rooms = ['search', 'uncertainty', 'remedy', 'sweep', 'compare', 'alarms', 'drive', 'draw']

const inEngine = (names: readonly string[]) => names.map((name) => `test/engine/${name}/`)

/** Tests that a fault may be caught by, the quick ones first. */
export const suites: Readonly<Record<string, readonly string[]>> = {
  sources: ['test/sources/', 'test/pins/'],
  engine: inEngine(parts),
  rooms: inEngine(rooms),
  golden: ['test/golden/'],
  laws: ['test/laws/'],
}

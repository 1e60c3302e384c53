import { newBuild } from '../../../shared-engine/assume/start.ts'
import { caution } from '../../../shared-engine/constants.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'

const notes = [
  'A starting point, not a machine: every number is assumed by the program. Replace it by yours, and change its origin from "assumed" to "stated" (a label) or "measured".',
  'What each entry means, its unit, its range and how to get it stands in the page beside this file.',
  'Check it at any time: pitchline check <this file>. Where a number comes from: pitchline explain <this file> freeRpm.',
  'Entries that are not here have a default or bring further figures: a drive tooth brings its stresses, thermal resistances bring temperatures.',
  caution,
].join('\n')

/** The new build of the window, with a name and notes that say how to go on in a text editor. */
export const startingPoint: StoredBuild = { ...newBuild(), name: 'My machine', notes }

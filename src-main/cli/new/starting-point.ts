import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { caution } from '../../../shared-engine/constants.ts'

const notes = [
  'A starting point, not a machine: replace every number by yours, and change its origin from "guessed" to "stated" (a label) or "measured".',
  'What each entry means, its unit, its range and how to get it stands in the page beside this file.',
  'Check it at any time: pitchline check <this file>. Where a number comes from: pitchline explain <this file> freeRpm.',
  'Entries that are not here have a default or bring further figures: a drive tooth brings its stresses, thermal resistances bring temperatures.',
  caution,
].join('\n')

/** A build to start from: a small twin-track machine with plausible values, all invented, each marked as guessed. */
export const startingPoint: StoredBuild = {
  format: 'pitchline-build',
  version: 1,
  name: 'My machine',
  notes,
  pack: {
    chemistry: 'liion',
    series: 6,
    parallel: 4,
    capacityMah: 12000,
    cellResistanceMilliohm: 25,
    wiringResistanceMilliohm: 8,
    continuousC: 3,
    burstC: 6,
  },
  controller: { resistanceMilliohm: 4, continuousAmps: 40, burstAmps: 60, currentLimitAmps: 45 },
  motor: {
    kvRpmPerVolt: 250,
    resistanceMilliohm: 60,
    noLoadAmps: 1,
    noLoadVolts: 20,
    poleCount: 14,
    ratedMaxRpm: 9000,
    continuousAmps: 30,
    burstAmps: 60,
  },
  stages: [{ kind: 'fixed', ratio: 10 }],
  track: { count: 2, pitchMm: 20, sprocketTeeth: 12, loopPitches: 60, massGPerM: 800, internalDragN: 12 },
  vehicle: { massKg: 15, contactLengthMm: 350, contactWidthMm: 60, gaugeMm: 300 },
  ground: { model: 'coefficient', rollingCoefficient: 0.08, gripCoefficient: 0.55, turnFriction: 0.5 },
  origins: {
    'motor.kvRpmPerVolt': 'guessed',
    'motor.ratedMaxRpm': 'guessed',
    'track.internalDragN': 'guessed',
    'motor.resistanceMilliohm': 'guessed',
    'pack.cellResistanceMilliohm': 'guessed',
    'vehicle.massKg': 'guessed',
    'ground.rollingCoefficient': 'guessed',
  },
}

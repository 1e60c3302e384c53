import { buildFormat } from '../entries/schema.ts'

/**
 * A build of no machine: where readings come without one, its defaults are in force, and what has no default is asked
 * for before it is read. Written in the first version of the format, so that migrations bring it up.
 */
export const blankBuild = {
  format: buildFormat,
  version: 1,
  name: 'no build',
  pack: { chemistry: 'lipo', series: 1, capacityMah: 1000, cellResistanceMilliohm: 1 },
  motor: {
    kvRpmPerVolt: 1000,
    resistanceMilliohm: 1,
    noLoadAmps: 0,
    noLoadVolts: 10,
    poleCount: 2,
    ratedMaxRpm: 10_000,
  },
  track: {
    pitchMm: 10,
    sprocketTeeth: 10,
    loopPitches: 100,
    massGPerM: 100,
    tooth: {
      heightMm: 1,
      rootMm: 1,
      widthMm: 1,
      material: 'custom',
      shearStrengthMpa: 1,
      tensileStrengthMpa: 1,
      bearingStrengthMpa: 1,
    },
  },
  vehicle: { massKg: 1 },
  ground: { model: 'coefficient', rollingCoefficient: 0.1, gripCoefficient: 1 },
  cooling: { kind: 'liquid', flowLPerMin: 1, coolant: 'water', radiatorWPerK: 1 },
}

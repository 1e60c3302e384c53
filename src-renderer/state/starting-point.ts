import type { StoredBuild } from '../../shared-engine/index.ts'

/**
 * A new build: every required entry, nothing else. Round numbers of a small machine, all of them guesses to be
 * replaced; that is what their origin says.
 */
export function startingPoint(): StoredBuild {
  return {
    format: 'pitchline-build',
    version: 1,
    name: 'New build',
    pack: { chemistry: 'lipo', series: 4, capacityMah: 5000, cellResistanceMilliohm: 3 },
    controller: { currentLimitAmps: 60 },
    motor: {
      kvRpmPerVolt: 1000,
      resistanceMilliohm: 40,
      noLoadAmps: 1.5,
      noLoadVolts: 12,
      poleCount: 14,
      ratedMaxRpm: 30000,
    },
    stages: [{ kind: 'fixed', ratio: 10 }],
    track: { pitchMm: 20, sprocketTeeth: 10, loopPitches: 60, massGPerM: 600 },
    vehicle: { massKg: 6 },
    ground: { model: 'coefficient', rollingCoefficient: 0.08, gripCoefficient: 0.6 },
    origins: {
      'controller.currentLimitAmps': 'guessed',
      'pack.cellResistanceMilliohm': 'guessed',
      'motor.kvRpmPerVolt': 'guessed',
      'motor.resistanceMilliohm': 'guessed',
      'motor.noLoadAmps': 'guessed',
      'motor.ratedMaxRpm': 'guessed',
      'vehicle.massKg': 'guessed',
      'ground.rollingCoefficient': 'guessed',
      'ground.gripCoefficient': 'guessed',
    },
  }
}

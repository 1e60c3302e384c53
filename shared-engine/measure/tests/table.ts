import type { TestId } from '../../reference/measurements.ts'
import type { GuidedTest } from '../kind.ts'
import { cgLift } from './cg-lift.ts'
import { cgTip } from './cg-tip.ts'
import { coastDown } from './coast-down.ts'
import { coolDown } from './cool-down.ts'
import { flow } from './flow.ts'
import { freeRun } from './free-run.ts'
import { grip } from './grip.ts'
import { kvSpin } from './kv-spin.ts'
import { kv } from './kv.ts'
import { load } from './load.ts'
import { loopBreak } from './loop-break.ts'
import { loopStiffness } from './loop-stiffness.ts'
import { packCapacity } from './pack-capacity.ts'
import { packResistance } from './pack-resistance.ts'
import { poleCount } from './pole-count.ts'
import { radiator } from './radiator.ts'
import { ratedRpm } from './rated-rpm.ts'
import { rollingBoard } from './rolling-board.ts'
import { rollingPull } from './rolling-pull.ts'
import { rotorBifilar } from './rotor-bifilar.ts'
import { rotorRunDown } from './rotor-run-down.ts'
import { skiFriction } from './ski-friction.ts'
import { slip } from './slip.ts'
import { spanFrequency } from './span-frequency.ts'
import { toothShear } from './tooth-shear.ts'
import { trackDrag } from './track-drag.ts'
import { trackPitch } from './track-pitch.ts'
import { turnFriction } from './turn-friction.ts'
import { warmUp } from './warm-up.ts'
import { weigh } from './weigh.ts'
import { weightShare } from './weight-share.ts'
import { windingResistance } from './winding-resistance.ts'
import { wiringDrop } from './wiring-drop.ts'

/** Every guided test by its name. To add one: its guide in the reference table, a file like grip.ts, a line here. */
export const guidedTests: Readonly<Record<TestId, GuidedTest>> = {
  kv,
  'kv-spin': kvSpin,
  'winding-resistance': windingResistance,
  'free-run': freeRun,
  'pack-resistance': packResistance,
  'wiring-drop': wiringDrop,
  'pack-capacity': packCapacity,
  weigh,
  'weight-share': weightShare,
  load,
  'cg-lift': cgLift,
  'cg-tip': cgTip,
  'rolling-pull': rollingPull,
  'rolling-board': rollingBoard,
  'coast-down': coastDown,
  grip,
  'ski-friction': skiFriction,
  'turn-friction': turnFriction,
  'track-drag': trackDrag,
  'span-frequency': spanFrequency,
  'loop-stiffness': loopStiffness,
  'tooth-shear': toothShear,
  'loop-break': loopBreak,
  'rotor-bifilar': rotorBifilar,
  'rotor-run-down': rotorRunDown,
  'warm-up': warmUp,
  'cool-down': coolDown,
  flow,
  radiator,
  'track-pitch': trackPitch,
  'pole-count': poleCount,
  slip,
  'rated-rpm': ratedRpm,
}

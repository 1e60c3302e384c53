import { DriveLine } from '../motor/drive-line.ts'
import { CruiseState } from '../vehicle/cruise.ts'
import { Footing } from '../ground/footing.ts'
import { StoodOn } from '../ground/stood-on.ts'
import { Motion } from '../vehicle/motion.ts'
import { RunFromRest } from '../vehicle/run.ts'
import { SpinUpLift } from '../vehicle/spin-up-lift.ts'
import { TopState } from '../vehicle/top-state.ts'
import { BrakingState } from './braking-step.ts'
import { Bursts } from './bursts.ts'
import { caseNumber } from './case.ts'
import { HeatTimes } from './heat-times.ts'
import { PatternHeat } from './pattern-heat.ts'
import { PatternState } from './pattern-state.ts'
import { Jam } from './jam.ts'
import { mostStages, ShaftDuty, StageDuty } from './stage-duty.ts'
import { TrainPulls } from './train-pulls.ts'
import { TrackLoad } from './track-loads.ts'
import { WiringState } from './wiring-step.ts'

/**
 * Everything about one machine that figures and limits read, in SI: how it moves in the running state, and what follows
 * from it; NaN where a number does not exist.
 * Filled again and again by `evaluate`, so that a search allocates nothing.
 */
export class Evaluation extends Motion {
  /** Whether jams are worked out, and rows of the ledger added that jams and a loop running free decide. */
  readonly mishaps: boolean

  /** @param mishaps false: what only they decide is left out, for a search that nothing of it is asked of */
  constructor(mishaps = true) {
    super()
    this.mishaps = mishaps
  }

  /** rad/s, the over-rev check's speed. */
  worstFreeSpeed = 0
  /** Kv · V_oc · δ in rad/s, pack full. */
  ruleOfThumbSpeed = 0

  /** Pack full, no accessories, motor at 20 °C. */
  readonly launchDrive = new DriveLine()
  /** A of one motor, before and after the current limit. */
  stallAmps = 0
  launchAmps = 0
  /** N·m of one motor, not below 0. */
  launchTorque = 0
  /** N·m of all motors at the sprockets, every efficiency 1, after limiters. */
  launchSprocketTorque = 0

  /** A of one motor: most of any throttle, after the limit, running state. */
  restAmps = 0
  /** F_m(0), N. */
  startThrust = 0

  readonly top = new TopState()
  /** Filled by `setTravel` when first asked for, and `cruise` with it. */
  readonly run = new RunFromRest()
  travelled = false
  /** The greatest currents that the ground lets happen. */
  readonly bursts = new Bursts()
  /** The drive pattern as steady rows, what it heats, how long the motor bears what, and the brakes. */
  readonly pattern = new PatternState()
  readonly heat = new PatternHeat()
  readonly times = new HeatTimes()
  readonly braking = new BrakingState()
  /** W in the cells, and °C of them when the usable charge is drawn. */
  packHeat = NaN
  packEnd = NaN
  readonly cruise = new CruiseState()

  /** A with accessories and V of the pack at top speed. */
  topPackAmps = NaN
  topPackVolts = NaN
  topMotorEfficiency = NaN
  topOverallEfficiency = NaN
  /** m/s² at rest; NaN without an equilibrium. */
  peakAcceleration = NaN

  /** N and duty. */
  frontLiftThrust = NaN
  frontLiftDuty = NaN
  /** The ground under a machine whose front is up: all weight on the tracks, full strength. */
  readonly lifted = new Footing()
  /** What that and the most grip are of. */
  readonly liftedOn = new StoodOn()
  /** F*, N: motor-side thrust at rest with the most standstill current. */
  strongestPush = NaN
  /** The same, at most the grip with the front up. */
  frontLiftPush = NaN
  readonly spinUpLift = new SpinUpLift()
  /** W x, N·m: what holds the front down; NaN without the centre of mass. */
  rightingMoment = NaN
  /** F_max, N, for what has to bear it: the soil's whole cohesion, snow of any strength. */
  mostGrip = 0
  /** rad of the slope, up and across. */
  slope = 0
  sideSlope = 0
  /** rad of the slopes on which it falls over; NaN where not known. */
  tipBack = NaN
  tipSide = NaN
  /** N per side and A of one motor. */
  pivotThrust = NaN
  pivotAmps = NaN

  readonly launchLoad = new TrackLoad()
  readonly gripLoad = new TrackLoad()
  readonly topLoad = new TrackLoad()
  readonly freeLoad = new TrackLoad()
  readonly stopLoad = new TrackLoad()
  readonly stopFreeLoad = new TrackLoad()
  /** The same in the order of `trackCases`. */
  readonly trackLoads: readonly TrackLoad[] = [
    this.launchLoad,
    this.gripLoad,
    this.topLoad,
    this.freeLoad,
    this.stopLoad,
    this.stopFreeLoad,
  ]
  /** Where the worst of launch, grip, top and free comes from, as a `caseNumber`. */
  worstToothCase: number = caseNumber.launch
  /** P_m, N of one loop: the jam's motor torque, whatever slips. */
  motorPull = NaN
  /** What goes through the train. */
  readonly pulls = new TrainPulls()
  /** What runs on when a loop is held. */
  readonly jam = new Jam()
  /** What each reduction bears, as many as a build may hold, and their driven shafts. */
  readonly stageDuties: readonly StageDuty[] = Array.from({ length: mostStages }, () => new StageDuty())
  readonly stageShafts: readonly ShaftDuty[] = Array.from({ length: mostStages }, () => new ShaftDuty())
  /** The motor's own shaft, its torque alone; the sprocket's. */
  readonly motorShaft = new ShaftDuty()
  readonly sprocketShaft = new ShaftDuty()
  /** Share of K_A F_e on the most loaded row, case launch; NaN where that is 0. */
  toothShare = NaN
  /** Worst cases: N. */
  toothForce = NaN
  loopTension = NaN
  /** Pa. */
  toothShear = NaN
  toothBending = NaN
  toothBearing = NaN
  /** m/s. */
  burstSpeed = NaN
  /** m/s at which a fixed loop leaves its wheels, running free; m by which it stands off at the fastest free speed. */
  liftOffSpeed = NaN
  loopGrowthFree = NaN
  readonly wiring = new WiringState()
}

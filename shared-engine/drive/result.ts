import type { Build } from '../entries/schema.ts'
import type { LimitId } from '../limits/id.ts'
import { energySinks, place, type EnergySink, type Pattern, type StateName } from './drive.ts'
import type { DriveModel, SettledRow } from './model.ts'
import { notesOf } from './notes.ts'
import { peakNames, type PeakName } from './reading.ts'
import type { Peak, Recorder } from './recorder.ts'
import type { DriveEnd } from './run.ts'
import { thinnedSamples, type DriveSample } from './series.ts'
import { starvedWords, type Starved } from './starving.ts'
import type { Watched, Watcher } from './watch.ts'

/** Where the energy of a drive went, J. */
export interface EnergyBook {
  /** ∫ V_oc I_pack dt. */
  readonly pack: number
  readonly sinks: Readonly<Record<EnergySink, number>>
  /** ½ m_e v² at the end; the drive starts at rest. */
  readonly motion: number
  /** What sinks and motion leave over: all of `rest`. */
  readonly missing: number
  readonly rest: {
    readonly wheelBrake: number
    /** Shafts' work in turns, less the motion that straight travel is credited with meanwhile. */
    readonly turns: number
    /** What belts and rotors took beyond their share of `motion`, lost where a spinning track is caught. */
    readonly spin: number
    /** Motion of loads put on or taken off under way. */
    readonly loads: number
    /** What motors would feed back that are driven faster than the pack’s volts: the model’s duty ends at the cap. */
    readonly capped: number
    /** The error of the steps. */
    readonly steps: number
  }
}

/** A drive, followed to its end. SI; temperatures in °C; a temperature that is not followed is null at the end. */
export interface DriveRun {
  readonly name: string
  readonly pattern: string
  readonly end: DriveEnd
  readonly seconds: number
  readonly metres: number
  /** A·s, and what is left, 0 to 1. */
  readonly chargeDrawn: number
  readonly chargeLeft: number
  /** Root mean square over the drive, A: of one motor, of the pack. */
  readonly motorAmpsRms: number
  readonly packAmpsRms: number
  /** J of one motor's iron; from the pack's cells; into its terminals; of the wheel brake. */
  readonly ironJoules: number
  readonly packJoules: number
  readonly backJoules: number
  readonly brakeJoules: number
  readonly turnSeconds: number
  readonly spinSeconds: number
  readonly windingEndC: number | null
  readonly caseEndC: number | null
  readonly controllerEndC: number | null
  readonly coolantEndC: number | null
  readonly packEndC: number
  readonly speedEnd: number
  /** Null where no moment counted. */
  readonly peaks: Readonly<Record<PeakName, Peak | null>>
  /** Ratings for long that the RMS current is over, by limit id. */
  readonly overContinuous: readonly LimitId[]
  readonly watched: readonly Watched[]
  /** From when on the pack gave less than was asked; null where it never did. */
  readonly starved: Starved | null
  readonly energy: EnergyBook
  /** J made in motors, controllers and cells, and given to the air. */
  readonly heatMade: number
  readonly heatToAir: number
  readonly series: readonly DriveSample[]
  /** What the numbers leave out or lean on. */
  readonly notes: readonly string[]
}

/** Points in time that a plot can show apart. */
const columns = 400

/** What a drive leaves behind. */
interface Driven {
  readonly build: Build
  readonly pattern: Pattern
  readonly model: DriveModel
  readonly recorder: Recorder
  readonly watcher: Watcher
  readonly starved: Starved | null
  readonly state: Float64Array
  readonly seconds: number
  readonly end: DriveEnd
  readonly lastRow: SettledRow
}

/** The figures of a drive that was followed to its end, or as far as it went. */
export function resultOf(driven: Driven): DriveRun {
  const { build, pattern, model, recorder, state, seconds, end } = driven
  const final = (name: StateName) => state[place[name]] as number
  const rms = (squared: number) => (seconds > 0 ? Math.sqrt(Math.max(0, squared) / seconds) : 0)
  const motorAmpsRms = rms(final('motorAmpsSquared'))
  const packAmpsRms = rms(final('packAmpsSquared'))
  const { machine, heat } = model
  return {
    name: build.name,
    pattern: pattern.name,
    end,
    seconds,
    metres: final('distance'),
    chargeDrawn: final('chargeDrawn'),
    chargeLeft: machine.pack.stateOfCharge - final('chargeDrawn') / machine.pack.capacity,
    motorAmpsRms,
    packAmpsRms,
    ironJoules: final('ironOfOne'),
    packJoules: final('packEnergy'),
    backJoules: final('back'),
    brakeJoules: final('wheelBrake'),
    turnSeconds: final('turnSeconds'),
    spinSeconds: final('spinSeconds'),
    windingEndC: heat.winding === null ? null : final('winding'),
    caseEndC: heat.case === null ? null : final('case'),
    controllerEndC: heat.controller === null ? null : final('controller'),
    coolantEndC: heat.circuit === null ? null : final('coolant'),
    packEndC: final('packTemperature'),
    speedEnd: Math.max(0, final('speed')),
    peaks: peaksOf(recorder),
    overContinuous: overContinuous(model, motorAmpsRms, packAmpsRms),
    watched: driven.watcher.result(),
    starved: driven.starved,
    energy: bookOf(driven, final),
    heatMade: final('heatMade'),
    heatToAir: final('heatToAir'),
    series: thinnedSamples(recorder.samples, columns, recorder.peakSamples),
    notes: [...(driven.starved === null ? [] : [starvedWords(driven.starved, 'metric')]), ...notesOf(model)],
  }
}

/** A peak of each name; without a spin-up its current is 0. */
function peaksOf(recorder: Recorder): Record<PeakName, Peak | null> {
  const none = { value: 0, seconds: 0 }
  return Object.fromEntries(
    peakNames.map((name) => [name, recorder.peak(name) ?? (name === 'spinUpMotorAmps' ? none : null)]),
  ) as Record<PeakName, Peak | null>
}

function bookOf({ model, lastRow }: Driven, final: (name: StateName) => number): EnergyBook {
  const sinks = Object.fromEntries(energySinks.map((name) => [name, final(name)])) as Record<
    EnergySink,
    number
  >
  const halfSquare = 0.5 * Math.max(0, final('speed')) ** 2
  const ownRotors = model.rotorMass - model.rotorMassAdded
  const motion = (lastRow.ground.mass + ownRotors) * halfSquare
  const pack = final('packEnergy')
  const spent = energySinks.reduce((sum, name) => sum + sinks[name], motion)
  const rest = {
    wheelBrake: final('wheelBrake'),
    turns: final('turns'),
    spin: final('rotors') - ownRotors * halfSquare,
    loads: -final('loads'),
    capped: -final('capped'),
  }
  const missing = pack - spent
  const steps = missing - rest.wheelBrake - rest.turns - rest.spin - rest.loads - rest.capped
  return { pack, sinks, motion, missing, rest: { ...rest, steps } }
}

function overContinuous({ machine }: DriveModel, motorAmps: number, packAmps: number): LimitId[] {
  const { motor, controller, pack } = machine
  const over = (id: LimitId, amps: number, allowed: number | null) =>
    allowed !== null && amps > allowed ? [id] : []
  return [
    ...over('motor.current-continuous', motorAmps, motor.continuousAmps),
    ...over('controller.current-continuous', motorAmps, controller.continuousAmps),
    ...over('pack.current-continuous', packAmps, pack.continuousAmps),
  ]
}

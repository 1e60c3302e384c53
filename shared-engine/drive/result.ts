import type { Build } from '../entries/schema.ts'
import { energySinks, place, type EnergySink, type Pattern, type StateName } from './drive.ts'
import type { DriveEnd, Stretch } from './run.ts'
import { samplesOf, thinnedSamples, type DriveSample } from './series.ts'
import type { DriveSetting } from './setting.ts'
import { peaksOf, watched, type Peak, type Watched } from './watch.ts'
import type { LimitId } from '../limits/id.ts'

/** Where the energy of a drive went, J. */
export interface EnergyBook {
  /** ∫ V_oc I_pack dt. */
  readonly pack: number
  readonly sinks: Readonly<Record<EnergySink, number>>
  /** ½ m_e v² at the end; the drive starts at rest. */
  readonly motion: number
  /** What the book misses: the error of the steps. */
  readonly missing: number
}

/** A drive, followed to its end. SI; temperatures in °C. */
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
  /** Ratings for long that the RMS current is over, by limit id. */
  readonly overContinuous: readonly LimitId[]
  readonly peaks: readonly Peak[]
  readonly watched: readonly Watched[]
  readonly energy: EnergyBook
  /** J made in motors and controllers, and given to the air. */
  readonly heatMade: number
  readonly heatToAir: number
  readonly series: readonly DriveSample[]
  /** What the numbers leave out or lean on. */
  readonly notes: readonly string[]
}

/** Points in time that a plot can show apart. */
const columns = 400

/** The figures of a drive that was followed to its end, or as far as it went. */
export function resultOf(
  build: Build,
  pattern: Pattern,
  setting: DriveSetting,
  stretches: readonly Stretch[],
  end: DriveEnd,
): DriveRun {
  const last = stretches.at(-1)?.run
  const seconds = last?.times.at(-1) ?? 0
  const final = (name: StateName) => last?.states.at(-1)?.[place[name]] ?? 0
  const placed = samplesOf(setting, stretches, Math.max(seconds / (2 * columns), 1e-3))
  const samples = placed.map(({ sample }) => sample)
  const rms = (squared: number) => (seconds > 0 ? Math.sqrt(Math.max(0, squared) / seconds) : 0)
  const motorAmpsRms = rms(final('motorAmpsSquared'))
  const packAmpsRms = rms(final('packAmpsSquared'))
  return {
    name: build.name,
    pattern: pattern.name,
    end,
    seconds,
    metres: final('distance'),
    chargeDrawn: final('chargeDrawn'),
    chargeLeft: samples.at(-1)?.charge ?? setting.machine.pack.stateOfCharge,
    motorAmpsRms,
    packAmpsRms,
    overContinuous: overContinuous(setting, motorAmpsRms, packAmpsRms),
    peaks: peaksOf(samples),
    watched: watched(setting, placed),
    energy: bookOf(setting, final),
    heatMade: final('heatMade'),
    heatToAir: final('heatToAir'),
    series: thinnedSamples(samples, columns),
    notes: notesOf(setting),
  }
}

function bookOf({ mass }: DriveSetting, final: (name: StateName) => number): EnergyBook {
  const sinks = Object.fromEntries(energySinks.map((name) => [name, final(name)])) as Record<
    EnergySink,
    number
  >
  const motion = 0.5 * mass * Math.max(0, final('speed')) ** 2
  const spent = energySinks.reduce((sum, name) => sum + sinks[name], motion)
  return { pack: final('packEnergy'), sinks, motion, missing: final('packEnergy') - spent }
}

function overContinuous({ machine }: DriveSetting, motorAmps: number, packAmps: number): LimitId[] {
  const { motor, controller, pack } = machine
  const over = (id: LimitId, amps: number, allowed: number | null) =>
    allowed !== null && amps > allowed ? [id] : []
  return [
    ...over('motor.current-continuous', motorAmps, motor.continuousAmps),
    ...over('controller.current-continuous', motorAmps, controller.continuousAmps),
    ...over('pack.current-continuous', packAmps, pack.continuousAmps),
  ]
}

function notesOf({ machine, massRaised, followsWinding, followsController }: DriveSetting): string[] {
  return [
    'Nothing is fed back while it coasts, and no brake acts but at rest, where it does not roll back [assumption].',
    'A wanted speed is approached as a calm driver would, closing the gap within about 1 s [assumption].',
    ...(massRaised
      ? ['So light a machine would settle its speed within milliseconds; here it takes 20 ms [assumption].']
      : []),
    ...(followsWinding
      ? []
      : [
          `Without motor.heatCapacityJPerK and motor.thermalResistanceKPerW the winding is held at service.windingTemperatureC, ${machine.service.windingTemperature} °C.`,
        ]),
    ...(followsController
      ? []
      : [
          'Without controller.heatCapacityJPerK and controller.thermalResistanceKPerW the controller’s temperature is not followed.',
        ]),
    ...(machine.cooling === null
      ? []
      : ['The circuit holds as much coolant as flows round in 20 s [assumption].']),
  ]
}

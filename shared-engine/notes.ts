import type { Machine } from './machine/parts.ts'
import type { Build } from './entries/schema.ts'
import type { Evaluation } from './cases/evaluation.ts'
import { outsideSoilTheory } from './ground/soil-theory.ts'
import { heatRemarks } from './limits/heat-remarks.ts'
import { hubRemarkOf, stageRemarks } from './limits/stage.ts'
import { trackRemarks } from './limits/track-remarks.ts'
import { formatText } from './units/display.ts'
import { ampsAt } from './motor/drive-line.ts'

/**
 * kg below which a motor's part throttle is told to draw more: one of 14 mm took 1.7 to 2.7 times the amps computed, from some
 * 40 mm on within 15 % (`docs/validation.md`). *Source:* assumption between the two.
 */
const smallMotor = 0.06

/** m of sinkage below which ruts are not worth a word. *Source:* common practice, no source. */
const rutsMatter = 0.01

/** How much deeper few wheels sink: z ∝ p^{1/n}, at peaks of 2 and 3 times the mean pressure (full-size vehicles, from memory). */
function deeperUnderWheels(exponent: number, sinkage: number): string | null {
  if (!(sinkage >= rutsMatter)) return null
  const deep = (peak: number) => formatText(sinkage * peak ** (1 / exponent), 'length', 'metric')
  return `Sinkage counts an even pressure, ${formatText(sinkage, 'length', 'metric')}: under few road wheels or a slack track it peaks at 2 to 3 times that, for ruts of ${deep(2)} to ${deep(3)} and more resistance. More and closer wheels come nearer to the mean.`
}

type Remark = (build: Build, machine: Machine, e: Evaluation) => string | readonly string[] | null

const remarks: readonly Remark[] = [
  (_build, _machine, e) =>
    e.top.exists
      ? null
      : 'It does not get going: thrust at rest is no more than what holds it back, so there is no top speed and what follows from it.',
  (_build, machine, e) => trackRemarks(machine, e),
  (_build, machine) =>
    machine.controller.currentLimit === Infinity
      ? 'No current limit is entered (controller.currentLimitAmps): resistance alone limits the launch current, which is rarely so.'
      : null,
  (_build, _machine, e) =>
    ampsAt(e.drive, 0) < e.restAmps * (1 - 1e-9)
      ? 'The pack is weak for this motor: it sags so far that part throttle pulls harder at rest than full throttle.'
      : null,
  (_build, machine, e) => stageRemarks(machine, e),
  (_build, { track, motor }) => [
    ...(track.shaft === null ? [] : hubRemarkOf(track.shaft.joint, Infinity, 'on the sprocket’s shaft')),
    ...(motor.joint === null
      ? []
      : hubRemarkOf(motor.joint.joint, motor.joint.hubBearing, 'on the motor’s shaft')),
  ],
  (_build, _machine, e) =>
    e.jam.isJudged
      ? 'A jam is judged for an obstacle at the loop’s tight span (track.tightSpanMm), without damping: a nearer one is worse, half the span gives up to 1.4 times the force.'
      : null,
  (_build, machine, e) =>
    outsideSoilTheory(machine, e.footing)
      ? 'Soil: this patch is smaller or lighter than those that the theory was measured on (0.3 m by 0.05 m, 2 kPa); take sinkage and thrust as a rough guide.'
      : null,
  (_build, { ground }, e) =>
    ground.model === 'soil' ? deeperUnderWheels(ground.exponent, e.footing.sinkage) : null,
  (_build, _machine, e) =>
    Number.isNaN(e.pattern.motion.accessoryAmps)
      ? 'Half-way to its reserve (service.reservePercent) the pack cannot feed all that draws on it beside the motors (accessories, cooling.pumpWatts): what the drive pattern brings has no numbers.'
      : null,
  (_build, _machine, e) =>
    e.heat.runaway && !Number.isNaN(e.pattern.motion.accessoryAmps)
      ? 'Thermal runaway: in this pattern the motor’s loss grows faster than its heat leaves, so it has no steady temperature.'
      : null,
  (_build, machine, e) => heatRemarks(machine, e),
  ({ motor }) =>
    motor.massKg !== undefined && motor.massKg < smallMotor && motor.inductanceMicrohenry === undefined
      ? 'So small a motor passes a large current ripple at part throttle: cruising and in drives it may draw up to 2.7 times the amps shown. Enter motor.inductanceMicrohenry; a higher PWM frequency helps.'
      : null,
  (build, machine, e) =>
    build.track.tooth !== undefined && Number.isNaN(e.trackLoads[0]?.climb)
      ? machine.track.loopStiffness === null
        ? 'How the teeth share the load is assumed (track.sharePercent); with track.loopStiffnessN it is computed from stiffness.'
        : null
      : null,
  (_build, machine, e) =>
    !Number.isNaN(e.trackLoads[0]?.climb) && machine.track.hold.pretension === 0
      ? 'Without pretension the last row climbs at any load alike: only flank angle, friction and teeth count.'
      : null,
]

/** What there is to say about a build's numbers, in plain sentences. */
export function notesOf(build: Build, machine: Machine, e: Evaluation): string[] {
  return remarks.flatMap((remark) => remark(build, machine, e) ?? [])
}

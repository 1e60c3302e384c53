import { warmUpCurve } from '../cases/warm-up.ts'
import type { Checked } from '../check.ts'
import { machinePicture } from '../draw/machine-picture.ts'
import { cruiseRange } from '../draw/plots/cruise-range.ts'
import { currentPowerEfficiency } from '../draw/plots/current-power-efficiency.ts'
import { jamForce } from '../draw/plots/jam.ts'
import type { PlotLook } from '../draw/plots/plot-look.ts'
import { runFromRest } from '../draw/plots/run-from-rest.ts'
import { thrustAgainstSpeed } from '../draw/plots/thrust-against-speed.ts'
import { warmUpData } from '../draw/plots/warm-up-data.ts'
import { warmUp } from '../draw/plots/warm-up.ts'
import type { Scene } from '../draw/scene.ts'
import { jamCurveOf } from '../explain/jam-curve.ts'
import type { UnitSystem } from '../units/kinds.ts'
import { cruiseCurve } from '../vehicle/cruise-curve.ts'
import { thrustCurve } from '../vehicle/curves.ts'
import { runFromRest as runOf } from '../vehicle/run-curve.ts'

/** px: as wide as a sheet's text at the size of its letters. */
const drawingWidth = 860
/** px: two stand side by side. */
const plotSize = { width: 380, height: 230 }
const tallSize = { width: 380, height: 380 }

/** The machine from pack to ground with two figures of each part at top speed, or standing where it has none. */
export function drawingOf(checked: Checked, system: UnitSystem): Scene {
  const still = checked.figures.topSpeedMps === null
  const title = `From pack to ground, ${still ? 'standing at full throttle' : 'at top speed'}`
  return { ...machinePicture(checked, system, drawingWidth), title }
}

/** The curves that the answers rest on, in the order of the window's questions. */
export function plotsOf(checked: Checked, system: UnitSystem): readonly Scene[] {
  const { machine, figures } = checked
  const small: PlotLook = { system, size: plotSize }
  const tall: PlotLook = { system, size: tallSize }
  const curve = thrustCurve(machine)
  const jam = jamCurveOf(checked)
  const topSpeed = curve.top?.groundSpeed ?? null
  return [
    thrustAgainstSpeed(curve, small),
    runFromRest(runOf(machine), small),
    currentPowerEfficiency({ states: curve.states, topSpeed }, tall),
    cruiseRange(cruiseCurve(machine), tall),
    warmUp(warmUpOf(checked, figures.patternMotorAmpsRms), small),
    ...(jam === null ? [] : [jamForce(jam, small)]),
  ]
}

/** The two that matter most, low, for the one page. */
export function fewPlotsOf(checked: Checked, system: UnitSystem): readonly Scene[] {
  const look: PlotLook = { system, size: { width: 380, height: 165 } }
  return [thrustAgainstSpeed(thrustCurve(checked.machine), look), runFromRest(runOf(checked.machine), look)]
}

function warmUpOf({ machine, figures }: Checked, amps: number | null) {
  const ironLoss = figures.patternIronWatts ?? 0
  return warmUpData(machine, amps, (cooled) =>
    amps === null ? null : warmUpCurve(machine, amps, ironLoss, cooled),
  )
}

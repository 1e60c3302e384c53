import { warmUpCurve } from '../cases/warm-up.ts'
import type { Checked } from '../check.ts'
import { partFigures } from '../draw/part-figures.ts'
import { powerPath } from '../draw/power-path.ts'
import { cruiseRange } from '../draw/plots/cruise-range.ts'
import { currentPowerEfficiency } from '../draw/plots/current-power-efficiency.ts'
import { jamForce } from '../draw/plots/jam.ts'
import type { PlotLook } from '../draw/plots/plot-look.ts'
import { runFromRest } from '../draw/plots/run-from-rest.ts'
import { thrustAgainstSpeed } from '../draw/plots/thrust-against-speed.ts'
import { warmUpData } from '../draw/plots/warm-up-data.ts'
import { warmUp } from '../draw/plots/warm-up.ts'
import type { Scene, Shape } from '../draw/scene.ts'
import { jamCurveOf } from '../explain/jam-curve.ts'
import { oneText } from '../units/display.ts'
import type { UnitSystem } from '../units/kinds.ts'
import { cruiseCurve } from '../vehicle/cruise-curve.ts'
import { curveSettingOf } from '../vehicle/curve-setting.ts'
import { thrustCurve } from '../vehicle/curves.ts'
import { driveStateAtGroundSpeed } from '../vehicle/curves.ts'
import { runFromRest as runOf } from '../vehicle/run-curve.ts'

/** px: as wide as a sheet's text at the size of its letters. */
const drawingWidth = 860
/** px: two stand side by side. */
const plotSize = { width: 380, height: 230 }
const tallSize = { width: 380, height: 380 }

/** The machine from pack to ground with two figures of each part at top speed, or standing where it has none. */
export function drawingOf({ machine, build, figures }: Checked, system: UnitSystem): Scene {
  const { parallel } = build.pack
  const path = powerPath(machine, { width: drawingWidth, system, cellsInParallel: parallel ?? 1 })
  const setting = curveSettingOf(machine)
  const state = driveStateAtGroundSpeed(setting, figures.topSpeedMps ?? 0)
  const shown = partFigures(machine, { ...state, duty: machine.controller.throttleCap }, system)
  const texts = path.parts.flatMap(({ part, figures: at }) =>
    (shown[part] ?? []).map((figure, line): Shape => ({
      shape: 'text',
      at: { x: at.x, y: at.y + 15 * line },
      text: oneText(figure),
      size: 13,
      role: 'ink',
      anchor: 'middle',
    })),
  )
  return {
    name: 'sheet-power-path',
    title: `From pack to ground, ${figures.topSpeedMps === null ? 'standing at full throttle' : 'at top speed'}`,
    summary: path.summary,
    width: path.width,
    height: path.height,
    shapes: [...path.shapes, ...texts],
    plot: null,
  }
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

function warmUpOf({ machine, figures }: Checked, amps: number | null) {
  const ironLoss = figures.patternIronWatts ?? 0
  return warmUpData(machine, amps, (cooled) =>
    amps === null ? null : warmUpCurve(machine, amps, ironLoss, cooled),
  )
}

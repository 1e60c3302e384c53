import type { Checked } from '../check.ts'
import type { UnitSystem } from '../units/kinds.ts'
import { oneText } from '../units/display.ts'
import { curveSettingOf } from '../vehicle/curve-setting.ts'
import { driveStateAtGroundSpeed } from '../vehicle/curves.ts'
import { partFigures } from './part-figures.ts'
import { powerPath } from './power-path.ts'
import type { Scene, Shape } from './scene.ts'

/** px; wide enough that every part stands clear. */
const usualWidth = 1280
const line = 15

/** The machine from pack to ground at its top speed, each part with its name and its two figures: for a picture. */
export function machinePicture(checked: Checked, system: UnitSystem, width = usualWidth): Scene {
  const { machine, build, figures } = checked
  const state = driveStateAtGroundSpeed(curveSettingOf(machine), figures.topSpeedMps ?? 0)
  const scene = powerPath(machine, { width, system, cellsInParallel: build.pack.parallel })
  const told = partFigures(machine, state, system)
  const words = scene.parts.flatMap(({ part, figures: at }): Shape[] =>
    (told[part] ?? []).map((figure, place) => ({
      shape: 'text',
      at: { x: at.x, y: at.y + place * line },
      text: oneText(figure),
      size: 13,
      role: 'ink',
      anchor: 'middle',
    })),
  )
  return { ...scene, name: 'machine', title: build.name, shapes: [...scene.shapes, ...words], plot: null }
}

import { fromEngine, toEngine } from '../../units/convert.ts'
import { displayUnit } from '../../units/display.ts'
import type { UnitSystem } from '../../units/kinds.ts'
import type { Shape } from '../scene.ts'
import { textWidth } from '../text-width.ts'
import { px } from './outline.ts'

/** The round length (1, 2 or 5 times a power of ten of the shown unit) nearest below `longest` px at `scale` px per m. */
function roundLength(scale: number, system: UnitSystem, longest: number): { metres: number; text: string } {
  const unit = displayUnit('length', system)
  const most = fromEngine(longest / scale, 'length', unit)
  const power = 10 ** Math.floor(Math.log10(most))
  const value = ([5, 2].find((step) => step * power <= most) ?? 1) * power
  return { metres: toEngine(value, 'length', unit), text: `${Number(value.toPrecision(1))} ${unit}` }
}

/** A bar of round length with its words, its middle at the origin. */
export function scaleBar(scale: number, system: UnitSystem, longest = 52): Shape[] {
  const { metres, text } = roundLength(scale, system, longest)
  const length = metres * scale
  const gap = 5
  const left = -(length + gap + textWidth(text, 11)) / 2
  const right = left + length
  const d = `M${px(left)} -3V3M${px(left)} 0H${px(right)}M${px(right)} -3V3`
  return [
    { shape: 'path', d, stroke: { role: 'quiet', width: 0.8 } },
    { shape: 'text', at: { x: right + gap, y: 3.5 }, text, size: 11, role: 'quiet' },
  ]
}

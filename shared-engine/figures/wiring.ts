import type { Evaluation } from '../cases/evaluation.ts'
import type { Machine } from '../machine/parts.ts'
import { finiteOrNull } from '../numeric/finite.ts'
import { figureRows } from './figure.ts'

/** What switching makes of the current. */
export class WiringFigures {
  busRippleVolts = NaN
  rippleAmps = NaN
  rippleWorstAmps = NaN
  motorRippleAmps = NaN
}

/** Fills them from an evaluation, in SI; NaN where one does not exist. */
export function setWiringFigures(values: WiringFigures, { wiring }: Evaluation): void {
  values.busRippleVolts = wiring.busRipple
  values.rippleAmps = wiring.rippleAmps
  values.rippleWorstAmps = wiring.rippleWorstAmps
  values.motorRippleAmps = wiring.motorRippleAmps
}

export const wiringFigures = figureRows(new WiringFigures(), setWiringFigures, {
  busRippleVolts: ['Bus ripple', 'volts'],
  rippleAmps: ['Ripple current of the capacitors through the pattern', 'amps'],
  rippleWorstAmps: ['Ripple current of the capacitors in a burst', 'amps'],
  motorRippleAmps: ['Ripple of the motor current, peak to peak', 'amps'],
})

/** What is reported of one wire; null where a number does not exist. */
interface WireFigures {
  readonly ohm: number | null
  /** Warm through, and after a burst begun there. */
  readonly steadyC: number | null
  readonly burstC: number | null
  /** A at which its insulation is at its limit. */
  readonly ampacity: number | null
  /** A that melt it within a burst. */
  readonly fusingAmps: number | null
}

/** Figures of every wire, in the build's order. */
export function wireFiguresOf({ wiring }: Evaluation, { wires }: Machine): readonly WireFigures[] {
  return wires.map((wire, index) => {
    const state = wiring.wires[index]
    const of = (value: number | undefined) => finiteOrNull(value ?? NaN)
    return {
      ohm: wire.resistance,
      steadyC: of(state?.steady),
      burstC: of(state?.burst),
      ampacity: of(state?.ampacity),
      fusingAmps: of(state?.fusingAmps),
    }
  })
}

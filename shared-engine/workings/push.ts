import { noLoadAtRest, sprocketRadius, torqueConstant } from './circuit.ts'
import { restAmps } from './currents.ts'
import type { Draft } from './draft.ts'

/** `F_m`: the strongest push of the motors at rest. */
export function strongestPush(d: Draft): void {
  restAmps(d)
  torqueConstant(d, 'service')
  noLoadAtRest(d)
  d.figure('G', 'ratio')
  d.figure('eta', 'efficiency')
  sprocketRadius(d)
  d.entry('D_0', 'track.internalDragN')
  const told = ['force', 'strongest push of the motors at rest'] as const
  d.step('F_m', told, 'M * K_t * (I_r - I_0) * G * eta / r - D_0')
}

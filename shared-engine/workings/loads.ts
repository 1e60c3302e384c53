import { trackCases, type TrackCase } from '../cases/case.ts'
import type { TrackLoad } from '../cases/track-loads.ts'
import type { Evaluated } from '../figures/evaluated.ts'
import { worstTrackCase } from '../cases/track-step.ts'
import { formatText } from '../units/display.ts'
import type { QuantityKind } from '../units/kinds.ts'
import { sprocketRadius } from './circuit.ts'
import type { Draft } from './draft.ts'
import { jamParts, leastOf, trainPull } from './pulls.ts'
import { internalDrag, topThrust } from './motion.ts'

// What each load case asks of one loop: steps for the worst one, a sentence about the others.

/** A quantity of a load case: how it is read, and how it is told. */
interface LoadQuantity {
  readonly of: (load: TrackLoad) => number
  readonly kind: QuantityKind
}

export const byToothForce: LoadQuantity = { of: (load) => load.toothForce, kind: 'force' }
export const byTension: LoadQuantity = { of: (load) => load.tension, kind: 'force' }

/** The case in which a quantity is largest. */
export function worstCase(checked: Evaluated, quantity: LoadQuantity): TrackCase {
  return worstTrackCase(checked.evaluation, quantity.of)
}

/** The load of a case. */
export function loadOf(checked: Evaluated, name: TrackCase): TrackLoad {
  const load = checked.evaluation.trackLoads[trackCases.indexOf(name)]
  if (load === undefined) throw new Error(`no track load ${name}`)
  return load
}

/** "the worst of the cases is launch; grip 120 N, top 45 N, free 3 N". */
export function casesTold(checked: Evaluated, quantity: LoadQuantity): string {
  const worst = worstCase(checked, quantity)
  const others = trackCases.slice(0, 4).filter((name) => name !== worst)
  const told = others.map((name) => {
    const value = quantity.of(loadOf(checked, name))
    if (Number.isNaN(value)) return `${name} does not arise`
    return `${name} ${formatText(value, quantity.kind, 'metric').replace('\u202F', ' ')}`
  })
  return `${worst} is the worst of the load cases: ${told.join(', ')}`
}

/** `F_e` and, where the loop runs, `v_b`: force at the drive sprocket per loop in a case. */
export function loopForce(d: Draft, name: TrackCase): void {
  d.entry('N_t', 'track.count')
  switch (name) {
    case 'launch':
      d.step('F_e', told('launch'), leastOf(jamParts(d, d.checked.machine.stages.length)))
      break
    case 'grip':
      trainPull(d, 'grip', d.checked.machine.stages.length)
      break
    case 'top':
      topThrust(d)
      d.figure('v_b', 'topBeltSpeedMps')
      internalDrag(d)
      d.step('F_e', told(name), '(F + D) / N_t')
      break
    case 'free':
      freeBeltSpeed(d)
      internalDrag(d)
      d.step('F_e', told(name), 'D / N_t')
      break
    case 'stop':
    case 'stop-free':
      throw new Error('what a stop pulls is no force without the service factor')
  }
}

const told = (name: TrackCase) => ['force', `pull of the sprocket on each loop, case ${name}`] as const

/** `v_b`: belt speed of the free-running motor. */
export function freeBeltSpeed(d: Draft): void {
  d.figure('n', 'freeRpm')
  d.figure('G', 'ratio')
  sprocketRadius(d)
  d.step('v_b', ['speed', 'belt speed of the free-running motor'], 'n * 2 * pi / 60 * r / G')
}

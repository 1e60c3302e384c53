import type { Checked } from '../../../shared-engine/index.ts'
import { comparedCurves } from '../../../shared-engine/compare/compare.ts'
import type { Overlay } from '../../../shared-engine/draw/plots/overlay.ts'

/** Curves that builds can be laid over each other in. */
export const curveNames = [
  { id: 'thrust', label: 'Thrust against speed' },
  { id: 'run', label: 'Run from rest' },
  { id: 'amps', label: 'Motor current against speed' },
] as const
export type CurveName = (typeof curveNames)[number]['id']

const groundSpeed = { label: 'Ground speed', kind: 'speed' } as const

/** One curve of every build, named by its letter. */
export function overlayOf(curve: CurveName, checked: readonly Checked[], names: readonly string[]): Overlay {
  const curves = comparedCurves(checked)
  const letter = (at: number) => `${'ABCD'[at] ?? ''} ${names[at] ?? ''}`
  const name = `overlay-${curve}`
  if (curve === 'run') {
    const builds = curves.map(({ run }, at) => ({
      name: letter(at),
      xs: run?.seconds ?? [],
      ys: run?.speed ?? [],
    }))
    return {
      name,
      title: 'Run from rest, each build',
      x: { label: 'Time', kind: 'time' },
      y: groundSpeed,
      builds,
    }
  }
  const isThrust = curve === 'thrust'
  const builds = curves.map(({ thrust }, at) => ({
    name: letter(at),
    xs: thrust.states.map((state) => state.groundSpeed),
    ys: thrust.states.map((state) => (isThrust ? state.thrust : state.motorAmps)),
  }))
  return {
    name,
    title: isThrust ? 'Thrust against speed, each build' : 'Current of one motor against speed, each build',
    x: groundSpeed,
    y: isThrust ? { label: 'Thrust', kind: 'force' } : { label: 'Current', kind: 'amps' },
    builds,
  }
}

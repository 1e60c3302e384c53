import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import type { Scene } from '../scene.ts'
import { cursorOver, said, seriesCurve } from './plot-look.ts'
import type { PlotLook } from './plot-look.ts'

interface RpmToSpeed {
  /** Ground speed (m/s) that the gearing gives at a motor speed (rpm), slip taken off. */
  readonly speedOfRpm: (rpm: number) => number
  readonly ratedRpm: number
  /** Motor speed at top speed; null where the machine does not get going. */
  readonly loadedRpm: number | null
  /** Worst-case unloaded motor speed. */
  readonly freeRpm: number
  /** Motor speed that a log shows; null or absent: none. */
  readonly loggedRpm?: number | null
}

function marksOf(data: RpmToSpeed, rpms: readonly number[], look: PlotLook): Mark[] {
  const { ratedRpm, loadedRpm, freeRpm, speedOfRpm } = data
  const past = freeRpm > ratedRpm
  const line = {
    ...seriesCurve(0, 'Ground speed', rpms, rpms.map(speedOfRpm)),
    marker: undefined,
    unnamed: true,
  }
  const rated: Mark = {
    mark: 'rule',
    axis: 'x',
    value: ratedRpm,
    label: `Rated ${said(ratedRpm, 'rpm', look)}`,
    role: past ? 'over' : 'quiet',
    beyond: 'above',
    limit: 'motor.free-rpm',
  }
  const free: Mark = {
    mark: 'point',
    x: freeRpm,
    y: speedOfRpm(freeRpm),
    label: `Unloaded ${said(freeRpm, 'rpm', look)}`,
    role: past ? 'over' : 'ink',
    marker: 'ring',
  }
  return [line, rated, ...loadedPoint(loadedRpm, speedOfRpm, look), free, ...loggedPoint(data, look)]
}

function loadedPoint(rpm: number | null, speedOfRpm: RpmToSpeed['speedOfRpm'], look: PlotLook): Mark[] {
  if (rpm === null) return []
  const speed = speedOfRpm(rpm)
  const label = `Top speed ${said(speed, 'speed', look)}`
  return [
    { mark: 'point', x: rpm, y: speed, label, role: 'accent', limit: 'motor.loaded-rpm', dropped: true },
  ]
}

/** What a log shows, as a flag on the line. */
function loggedPoint({ loggedRpm = null, speedOfRpm }: RpmToSpeed, look: PlotLook): Mark[] {
  if (loggedRpm === null) return []
  const speed = speedOfRpm(loggedRpm)
  const label = `Log: ${said(loggedRpm, 'rpm', look)}, ${said(speed, 'speed', look)}`
  return [{ mark: 'point', x: loggedRpm, y: speed, label, role: 'ink', marker: 'flag', dropped: true }]
}

/** Motor rpm against ground speed, with the rated limit, the loaded and the unloaded speed marked. */
export function rpmToSpeed(data: RpmToSpeed, look: PlotLook): Scene {
  const { ratedRpm, loadedRpm, freeRpm, speedOfRpm, loggedRpm = null } = data
  // Room on the right for the name of the fastest mark.
  const highest = 1.32 * Math.max(ratedRpm, freeRpm, loadedRpm ?? 0, loggedRpm ?? 0)
  const rpms = Array.from({ length: 101 }, (_, index) => (highest * index) / 100)
  const top =
    loadedRpm === null
      ? 'It does not get going'
      : `Top speed ${said(speedOfRpm(loadedRpm), 'speed', look)} at ${said(loadedRpm, 'rpm', look)}`
  const free = `unloaded the motor reaches ${said(freeRpm, 'rpm', look)}`
  const rated = `${freeRpm > ratedRpm ? 'past' : 'within'} its rated ${said(ratedRpm, 'rpm', look)}`
  return plot({
    name: 'rpm-to-speed',
    title: 'Ground speed over motor rpm',
    summary: `${top}; ${free}, ${rated}.${loggedRpm === null ? '' : ` A log shows ${said(loggedRpm, 'rpm', look)}: ${said(speedOfRpm(loggedRpm), 'speed', look)}.`}`,
    ...look,
    sureTo: look.figures,
    x: { label: 'Motor speed', kind: 'rpm' },
    panels: [{ y: { label: 'Ground speed', kind: 'speed' }, marks: marksOf(data, rpms, look) }],
    cursor: cursorOver('groundSpeed', rpms, rpms.map(speedOfRpm)),
  })
}

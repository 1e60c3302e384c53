import type { Build } from '../entries/schema.ts'
import { absentOf } from './limit.ts'

/** Entries without which no stop is judged, of those a build lacks. */
export function lackingForStop(build: Build): readonly string[] {
  const inertia = build.motor.rotorInertiaGcm2 > 0 ? [] : ['motor.rotorInertiaGcm2']
  return [...inertia, ...lackingForSharing(build)]
}

/** Entries without which the rows do not share by stiffness, of those a build lacks. */
export function lackingForSharing(build: Build): readonly string[] {
  const { tooth } = build.track
  const loop = absentOf(build, ['track.loopStiffnessN'])
  if (tooth === undefined) return [...loop, 'track.tooth']
  const modulus = tooth.material === 'custom' && tooth.modulusMpa === undefined
  return modulus ? [...loop, 'track.tooth.modulusMpa'] : loop
}

import { isAssumed } from '../../shared-engine/assume/assumed.ts'
import type { StoredBuild } from '../../shared-engine/entries/schema.ts'

/** The numbers by which a builder knows a part: while all of them are assumed, nobody has said what the part is. */
const known: Readonly<Record<string, readonly string[]>> = {
  pack: ['pack.series', 'pack.capacityMah'],
  controller: ['controller.currentLimitAmps'],
  motor: ['motor.kvRpmPerVolt', 'motor.massKg'],
  track: ['track.pitchMm', 'track.sprocketTeeth'],
  vehicle: ['vehicle.massKg'],
  ground: ['ground.gripCoefficient'],
}

/** Parts of the drawing that nobody has entered yet: they are drawn faintly, and in full as soon as one number is there. */
export function assumedParts(stored: StoredBuild): readonly string[] {
  const parts = Object.entries(known).flatMap(([part, paths]) =>
    paths.every((path) => isAssumed(stored, path)) ? [part] : [],
  )
  const stages = (stored.stages ?? []).flatMap((_, index) => {
    const sizes = ['ratio', 'driverTeeth', 'drivenTeeth'].map((key) => `stages.${index}.${key}`)
    return sizes.some((path) => isAssumed(stored, path)) ? [`stage.${index + 1}`] : []
  })
  return [...parts, ...stages]
}

import type { Build } from '../entries/schema.ts'
import {
  accessoriesPartOf,
  controllerPartOf,
  coolingPartOf,
  machineOf,
  motorPartOf,
  packPartOf,
  servicePartOf,
  trainOf,
  vehiclePartOf,
} from './machine.ts'
import { groundPartOf } from './ground.ts'
import type { Machine, StagePart } from './parts.ts'
import { stagePartOf } from './stage.ts'
import { trackPartOf } from './track.ts'
import { stepDownPartOf, wirePartOf } from './wires.ts'

/**
 * Machines of one build after another that share most of their groups: a part is made again only where a group that it is
 * made from is another object. Equal in every digit to `machineOf` of the build; what follows a machine by the identity of
 * its parts finds the ones that stay.
 */
export class MachineMaker {
  #build: Build | null = null
  #machine: Machine | null = null

  /** The machine of a build. @param build complete and sound; its groups are never changed once made */
  of(build: Build): Machine {
    const before = this.#build
    const known = this.#machine
    this.#build = build
    return (this.#machine =
      before === null || known === null ? machineOf(build) : again(build, before, known))
  }
}

function again(build: Build, before: Build, known: Machine): Machine {
  const { pack, controller, motor, track, vehicle, ground, cooling, service } = build
  const { accessories, stepDowns, wires } = build
  const stages = build.stages === before.stages ? known.stages : stagesAgain(build, before, known)
  const drive =
    motor === before.motor && build.stages[0] === before.stages[0] ? known.motor : motorPartOf(build)
  const stood = ground === before.ground ? known.ground : groundPartOf(build)
  const sameAir = stood.airTemperature === known.ground.airTemperature
  const sameSupplies = stepDowns === before.stepDowns && accessories === before.accessories
  return {
    name: build.name,
    pack: pack === before.pack && service === before.service ? known.pack : packPartOf(build),
    controller: controller === before.controller ? known.controller : controllerPartOf(controller),
    motor: drive,
    stages,
    train: drive === known.motor && stages === known.stages ? known.train : trainOf(drive, stages),
    track: track === before.track && sameAir ? known.track : trackPartOf(track, stood.airTemperature),
    vehicle: vehicle === before.vehicle ? known.vehicle : vehiclePartOf(vehicle),
    ground: stood,
    cooling: cooling === before.cooling ? known.cooling : coolingPartOf(cooling),
    accessories: sameSupplies && cooling === before.cooling ? known.accessories : accessoriesPartOf(build),
    stepDowns: sameSupplies
      ? known.stepDowns
      : stepDowns.map((supply, place) => stepDownPartOf(supply, place, accessories)),
    wires: wires === before.wires ? known.wires : wires.map(wirePartOf),
    service: service === before.service ? known.service : servicePartOf(service),
  }
}

function stagesAgain({ stages }: Build, before: Build, known: Machine): StagePart[] {
  return stages.map((stage, at) => {
    const part = stage === before.stages[at] ? known.stages[at] : undefined
    return part ?? stagePartOf(stage)
  })
}

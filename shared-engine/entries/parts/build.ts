import type { Rows } from '../rows/group.ts'
import { accessories } from './accessories.ts'
import { controller } from './controller.ts'
import { cooling } from './cooling.ts'
import { origins, tolerances } from './evidence.ts'
import { general } from './general.ts'
import { ground } from './ground.ts'
import { motor } from './motor.ts'
import { pack } from './pack.ts'
import { readings } from './readings.ts'
import { service } from './service.ts'
import { stepDowns } from './step-downs.ts'
import { stages } from './stages/stages.ts'
import { track } from './track.ts'
import { vehicle } from './vehicle.ts'
import { wires } from './wires.ts'

/** Every entry of the stored build, in the order in which it is written. */
export const buildRows = {
  ...general,
  pack,
  controller,
  motor,
  stages,
  track,
  vehicle,
  ground,
  cooling,
  accessories,
  stepDowns,
  wires,
  service,
  tolerances,
  origins,
  readings,
} as const satisfies Rows

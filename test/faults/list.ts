import { drivingFaults } from './driving.ts'
import { electricFaults } from './electric.ts'
import type { Fault } from './fault.ts'
import { mechanicalFaults } from './mechanical.ts'
import { roomFaults } from './rooms.ts'

/** Every planted fault, by subject. */
export const faults: readonly Fault[] = [
  ...electricFaults,
  ...mechanicalFaults,
  ...drivingFaults,
  ...roomFaults,
]

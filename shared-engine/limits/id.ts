import type { BrakeLimitId } from './brakes.ts'
import type { ControllerLimitId } from './controller.ts'
import type { ConverterLimitId } from './converter.ts'
import type { CoolingLimitId } from './cooling.ts'
import type { FuseLimitId } from './fuse.ts'
import type { MotorLimitId } from './motor.ts'
import type { PackLimitId } from './pack.ts'
import type { StageLimitId } from './stage.ts'
import type { SupplyLimitId } from './supply.ts'
import type { SeatLimitId } from './seat-limits.ts'
import type { TrackStopLimitId } from './track-stop.ts'
import type { TrackLimitId } from './track.ts'
import type { VehicleLimitId } from './vehicle.ts'
import type { WireLimitId } from './wire.ts'

/** Name of a limit: the keys under which the parts define theirs. Reductions and converters count from 1. */
export type LimitId =
  | MotorLimitId
  | ControllerLimitId
  | PackLimitId
  | CoolingLimitId
  | TrackLimitId
  | TrackStopLimitId
  | SeatLimitId
  | VehicleLimitId
  | BrakeLimitId
  | StageLimitId
  | ConverterLimitId
  | FuseLimitId
  | SupplyLimitId
  | WireLimitId

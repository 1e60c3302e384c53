import { chainRows } from './entries.ts'
import { chainSizeOf, strandFactor } from '../../reference/chains.ts'
import { siOf } from '../../machine/si.ts'
import { commonOf, wheelsOf, type StageCommon, type StoredStage } from '../../machine/stage-common.ts'
import { chainWheelRadius } from './geometry.ts'

/** A roller chain round two wheels. */
export interface ChainStage extends StageCommon {
  readonly kind: 'chain'
  readonly pitch: number
  /** m, pitch radius. */
  readonly driverRadius: number
  readonly strands: number
  readonly centre: number | null
  /** N, of one strand: the least tension that breaks it. */
  readonly minTensile: number
  /** kg/m of all strands. */
  readonly massPerMetre: number
  readonly strandFactor: number
  /** Size constants of the power rating (hp, rpm, inches); see physics.ts. */
  readonly platesFactor: number
  readonly rollerFactor: number
  readonly pitchInches: number
  /** Turns of the smaller wheel for one of the driver. */
  readonly smallerTurns: number
  /** c N^1.08 P^(3 − 0.07 P) and 1000 K_r N^1.5 P^0.8 of the rating. */
  readonly platesTerm: number
  readonly rollerTerm: number
}

const chainIn = siOf(chainRows)

/** A roller chain in SI; terms of the power rating that no load changes. *Source:* `docs/model.md` §4; Shigley, eqs. 17-32 and 17-33. */
export function chainPartOf(stage: StoredStage<'chain'>): ChainStage {
  const si = chainIn(stage)
  const size = chainSizeOf(stage.size)
  const driverRadius = chainWheelRadius(size.pitch, stage.driverTeeth)
  const { ratio, driverTeeth, drivenTeeth } = wheelsOf(stage)
  const common = commonOf(stage)
  const smaller = Math.min(stage.driverTeeth, stage.drivenTeeth)
  return {
    kind: 'chain',
    ratio,
    driverTeeth,
    drivenTeeth,
    efficiency: common.efficiency,
    drivenInertia: common.drivenInertia,
    shaft: common.shaft,
    slipTorque: common.slipTorque,
    pitch: size.pitch,
    driverRadius,
    pullPerTorque: 1 / driverRadius,
    strands: stage.strands,
    centre: si('centreMm'),
    minTensile: size.minTensile,
    massPerMetre: size.massPerMetre * stage.strands,
    strandFactor: strandFactor(stage.strands),
    platesFactor: size.platesFactor,
    rollerFactor: size.rollerFactor,
    pitchInches: size.pitchInches,
    smallerTurns: stage.driverTeeth / smaller,
    platesTerm: size.platesTerm * smaller ** 1.08,
    rollerTerm: size.rollerTerm * smaller ** 1.5,
  }
}

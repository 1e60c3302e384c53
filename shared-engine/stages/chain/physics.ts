import type { ChainStage } from './machine.ts'
import { horsepower, fullTurn } from '../../constants.ts'
import { power } from '../../numeric/power.ts'
import { rpmPerRadianPerSecond } from '../../units/rpm.ts'

/** Breaking strength over working tension. *Source:* common practice, no source. */
export const chainSafety = 8

/**
 * Tension of the pulling run.
 *
 * K_A T/r + m v², v = ω r of the driver.
 *
 * @param torque K_A T, N·m into the stage, service factor included
 * @param speed ω, rad/s of the driver
 * @returns N
 * *Source:* statics, and the chain's own centrifugal pull.
 */
export function chainTension(stage: ChainStage, torque: number, speed: number): number {
  const chainSpeed = speed * stage.driverRadius
  return torque / stage.driverRadius + stage.massPerMetre * chainSpeed * chainSpeed
}

/** Breaking strength over a pull that comes once. *Source:* assumption. */
export const chainPeakSafety = 3

/** Pull allowed once, N: strands · F_u/3. *Source:* assumption. */
export function peakChainTension(stage: ChainStage): number {
  return (stage.strands * stage.minTensile) / chainPeakSafety
}

/** Tension that breaks a chain, N: strands · F_u. *Source:* ISO 606, minimum tensile strength. */
export function breakingChainTension(stage: ChainStage): number {
  return stage.strands * stage.minTensile
}

/** Working tension allowed, N: strands · F_u/8. *Source:* common practice, no source. */
export function allowedChainTension(stage: ChainStage): number {
  return (stage.strands * stage.minTensile) / chainSafety
}

/**
 * Power rating of a chain stage.
 *
 * min(H_1, H_2) · strandFactor,  H_1 = c N^1.08 n^0.9 P^(3 − 0.07 P),  H_2 = 1000 K_r N^1.5 P^0.8/n^1.5 hp.
 *
 * @param speed rad/s of the driver
 * @returns W
 * *Source:* Shigley, eqs. 17-32 and 17-33 (N, n of the smaller wheel, P in inches); 1 hp = 745.699872 W.
 */
export function chainPowerRating(stage: ChainStage, speed: number): number {
  const turns = speed * stage.smallerTurns * rpmPerRadianPerSecond
  const plates = stage.platesTerm * power(turns, 0.9)
  const rollers = stage.rollerTerm / (turns * Math.sqrt(turns))
  return Math.min(plates, rollers) * stage.strandFactor * horsepower
}

/**
 * Speed ripple of the smaller wheel, whose chain runs on a polygon.
 *
 * 1 − cos(π/z).
 *
 * @returns share of the mean speed
 * *Source:* chordal action, Shigley, sec. 17-5.
 */
export function chainRipple(stage: Pick<ChainStage, 'driverTeeth' | 'drivenTeeth'>): number {
  return 1 - Math.cos(Math.PI / Math.min(stage.driverTeeth, stage.drivenTeeth))
}

/** Chain to buy: links, rounded to an even number, and the centre distance that they want. */
interface ChainFit {
  /** Links, not rounded, for the centre distance entered. */
  readonly exactLinks: number
  readonly links: number
  /** m; NaN where so few links do not reach round the wheels. */
  readonly centre: number
}

/**
 * Chain to buy for a stage.
 *
 * L/p = 2 C/p + (z_1 + z_2)/2 + ((z_2 − z_1)/2π)² p/C; solved for C with the even number of links nearest.
 *
 * @returns null without a centre distance
 * *Source:* Shigley, eqs. 17-34 and 17-35; ISO 606 practice of even links.
 */
export function chainFitOf(
  stage: Pick<ChainStage, 'pitch' | 'driverTeeth' | 'drivenTeeth' | 'centre'>,
): ChainFit | null {
  if (stage.centre === null) return null
  const pitches = stage.centre / stage.pitch
  const halfSum = (stage.driverTeeth + stage.drivenTeeth) / 2
  const spread = ((stage.drivenTeeth - stage.driverTeeth) / fullTurn) ** 2
  const exactLinks = 2 * pitches + halfSum + spread / pitches
  const links = 2 * Math.round(exactLinks / 2)
  const straight = links - halfSum
  return {
    exactLinks,
    links,
    centre: (stage.pitch / 4) * (straight + Math.sqrt(straight * straight - 8 * spread)),
  }
}

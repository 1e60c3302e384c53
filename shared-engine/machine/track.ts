import { assumedRowShare, climbSlopeOf, rowStiffnessOf } from '../geometry/drive-tooth.ts'
import { rowSpringsOf, type RowSprings } from '../geometry/row-springs.ts'
import { materialOf } from '../reference/materials.ts'
import type { ToothPart, TrackPart } from './parts.ts'
import type { Build } from '../entries/schema.ts'
import { absent, degree, mega, milli, percent } from './si.ts'

type StoredTooth = NonNullable<Build['track']['tooth']>

/** Poisson's ratio of a metal tooth and of every softer one. *Source:* `docs/model.md` §6, handbook values. */
const poissonOf = { metal: 0.3, other: 0.45 } as const

/**
 * Loops and sprocket in SI.
 *
 * Advance per turn a = z p;  pitch radius r = a/2π;  engaged teeth z_e = max(1, ⌊z wrap/360°⌋).
 */
export function trackPartOf(track: Build['track']): TrackPart {
  const pitch = track.pitchMm * milli
  const advance = track.sprocketTeeth * pitch
  const massPerMetre = track.massGPerM * milli
  const tooth = track.tooth === undefined ? null : toothPartOf(track.tooth, track.knockdownPercent * percent)
  // 1e-9: an exact share of a turn is not to be lost to the last digit
  const engagedTeeth = Math.max(1, Math.floor((track.sprocketTeeth * track.wrapDegrees) / 360 + 1e-9))
  const share = track.sharePercent * percent
  return {
    count: track.count,
    pitch,
    sprocketTeeth: track.sprocketTeeth,
    loopPitches: track.loopPitches,
    advance,
    radius: advance / (2 * Math.PI),
    massPerMetre,
    loopMass: massPerMetre * track.loopPitches * pitch,
    pretension: track.pretensionN,
    breakingTension: absent(track.breakingTensionN),
    wrap: track.wrapDegrees * degree,
    engagedTeeth,
    teethAcross: track.teethAcross,
    share,
    toothShare: assumedRowShare(share, engagedTeeth) / track.teethAcross,
    loopStiffness: absent(track.loopStiffnessN),
    pitchError: track.pitchErrorMm * milli,
    springs: springsOf(track, tooth),
    tooth,
    internalDrag: track.internalDragN,
    internalDragPerSpeed: track.internalDragNPerMps,
  }
}

/** The rows as springs, where loop and tooth have a stiffness. */
function springsOf(track: Build['track'], tooth: ToothPart | null): RowSprings | null {
  if (track.loopStiffnessN === undefined || tooth === null || tooth.modulus === null) return null
  const stiffness = rowStiffnessOf({ ...tooth, modulus: tooth.modulus }, track.teethAcross)
  return rowSpringsOf(stiffness, track.loopStiffnessN, track.pitchMm * milli, track.pitchErrorMm * milli)
}

/** Drive tooth in SI; strengths are what printing, moulding or gluing leaves of the material's. */
function toothPartOf(tooth: StoredTooth, knockdown: number): ToothPart {
  const strengths = strengthsOf(tooth)
  const height = tooth.heightMm * milli
  const flank = tooth.flankDegrees === undefined ? null : tooth.flankDegrees * degree
  return {
    height,
    root: tooth.rootMm * milli,
    width: tooth.widthMm * milli,
    loadHeight: tooth.loadHeightMm === undefined ? height / 2 : tooth.loadHeightMm * milli,
    modulus: tooth.modulusMpa === undefined ? strengths.modulus : tooth.modulusMpa * mega,
    poisson: strengths.poisson,
    flank,
    flankFriction: tooth.flankFriction,
    climbSlope: flank === null ? null : climbSlopeOf(flank, tooth.flankFriction),
    allowedShear: strengths.shear * knockdown,
    allowedTensile: strengths.tensile * knockdown,
    allowedBearing: strengths.bearing * knockdown,
  }
}

function strengthsOf(tooth: StoredTooth) {
  if (tooth.material === 'custom') {
    return {
      shear: tooth.shearStrengthMpa * mega,
      tensile: tooth.tensileStrengthMpa * mega,
      bearing: tooth.bearingStrengthMpa * mega,
      modulus: null,
      poisson: poissonOf.other,
    }
  }
  const { shear, tensile, bearing, modulus, family } = materialOf(tooth.material)
  return { shear, tensile, bearing, modulus, poisson: family === 'metal' ? poissonOf.metal : poissonOf.other }
}

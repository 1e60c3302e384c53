import { assumedRowShare, climbSlopeOf, rowStiffnessOf } from '../geometry/drive-tooth.ts'
import { rowSpringsOf, type RowSprings } from '../geometry/row-springs.ts'
import { materialOf } from '../reference/materials.ts'
import { bearingPartOf } from './bearing.ts'
import { jointPartOf } from './joint.ts'
import type { ToothPart, TrackPart, TrackShaftPart } from './parts.ts'
import { buildRows } from '../entries/parts/build.ts'
import type { Build } from '../entries/schema.ts'
import { siOf } from './si.ts'
import { fullTurn } from '../constants.ts'

type StoredTooth = NonNullable<Build['track']['tooth']>

const rows = buildRows.track.entries
const trackIn = siOf(rows)
const toothIn = siOf(rows.tooth.variants.custom)
const shaftIn = siOf(rows.shaft.entries)

/** Part of the breaking tension that a loop bears for good. *Source:* assumption. */
const workingShare = 0.2

/** Poisson's ratio of a metal tooth and of every softer one. *Source:* `docs/model.md` §6, handbook values. */
const poissonOf = { metal: 0.3, other: 0.45 } as const

/**
 * Loops and sprocket in SI.
 *
 * Advance per turn a = z p;  pitch radius r = a/2π;  engaged teeth z_e = max(1, ⌊z wrap/360°⌋).
 */
export function trackPartOf(track: Build['track']): TrackPart {
  const si = trackIn(track)
  const pitch = si('pitchMm')
  const advance = track.sprocketTeeth * pitch
  const massPerMetre = si('massGPerM')
  const tooth = track.tooth === undefined ? null : toothPartOf(track.tooth, si('knockdownPercent'))
  // 1e-9: an exact share of a turn is not to be lost to the last digit
  const engagedTeeth = Math.max(1, Math.floor((track.sprocketTeeth * track.wrapDegrees) / 360 + 1e-9))
  const share = si('sharePercent')
  return {
    count: track.count,
    pitch,
    sprocketTeeth: track.sprocketTeeth,
    loopPitches: track.loopPitches,
    advance,
    radius: advance / fullTurn,
    massPerMetre,
    loopMass: massPerMetre * track.loopPitches * pitch,
    pretension: si('pretensionN') ?? 0,
    pretensionGiven: track.pretensionN !== undefined,
    tensioner: track.tensioner,
    tightSpan: si('tightSpanMm'),
    enclosedArea: si('enclosedAreaCm2'),
    loopMaterial: track.loopMaterial === undefined ? null : materialOf(track.loopMaterial),
    frameMaterial: materialOf(track.frameMaterial),
    assemblyTemperature: si('assemblyTemperatureC'),
    workingTension: si('workingTensionN') ?? workingShareOf(si('breakingTensionN')),
    breakingTension: si('breakingTensionN'),
    wrap: si('wrapDegrees'),
    engagedTeeth,
    teethAcross: track.teethAcross,
    share,
    toothShare: assumedRowShare(share, engagedTeeth) / track.teethAcross,
    loopStiffness: si('loopStiffnessN'),
    pitchError: si('pitchErrorMm'),
    springs: springsOf(track, tooth),
    tooth,
    shaft: track.shaft === undefined ? null : shaftPartOf(track.shaft),
    internalDrag: si('internalDragN'),
    internalDragPerSpeed: si('internalDragNPerMps'),
  }
}

/** What a loop bears for good where only what breaks it is known, N. *Source:* assumption. */
function workingShareOf(breaking: number | null): number | null {
  return breaking === null ? null : workingShare * breaking
}

function shaftPartOf(shaft: NonNullable<Build['track']['shaft']>): TrackShaftPart {
  const si = shaftIn(shaft)
  return {
    diameter: si('diameterMm'),
    material: materialOf(shaft.material),
    span: si('spanMm'),
    overhang: si('overhangMm'),
    joint: shaft.joint === undefined ? null : jointPartOf(shaft.joint),
    bearing: shaft.bearing === undefined ? null : bearingPartOf(shaft.bearing),
  }
}

/** The rows as springs, where loop and tooth have a stiffness. */
function springsOf(track: Build['track'], tooth: ToothPart | null): RowSprings | null {
  const si = trackIn(track)
  const loopStiffness = si('loopStiffnessN')
  if (loopStiffness === null || tooth === null || tooth.modulus === null) return null
  const stiffness = rowStiffnessOf({ ...tooth, modulus: tooth.modulus }, track.teethAcross)
  return rowSpringsOf(stiffness, loopStiffness, si('pitchMm'), si('pitchErrorMm'))
}

/** Drive tooth in SI; strengths are what printing, moulding or gluing leaves of the material's. */
function toothPartOf(tooth: StoredTooth, knockdown: number): ToothPart {
  const si = toothIn(tooth)
  const strengths = strengthsOf(tooth)
  const height = si('heightMm')
  const flankFriction = si('flankFriction')
  const flank = si('flankDegrees')
  return {
    height,
    root: si('rootMm'),
    width: si('widthMm'),
    loadHeight: si('loadHeightMm') ?? height / 2,
    modulus: si('modulusMpa') ?? strengths.modulus,
    poisson: strengths.poisson,
    flank,
    flankFriction,
    climbSlope: flank === null ? null : climbSlopeOf(flank, flankFriction),
    allowedShear: strengths.shear * knockdown,
    allowedTensile: strengths.tensile * knockdown,
    allowedBearing: strengths.bearing * knockdown,
    workShear: leftOf(strengths.workShear, knockdown),
    workTensile: leftOf(strengths.workTensile, knockdown),
    workBearing: leftOf(strengths.workBearing, knockdown),
  }
}

function leftOf(strength: number | null, knockdown: number): number | null {
  return strength === null ? null : strength * knockdown
}

function strengthsOf(tooth: StoredTooth) {
  if (tooth.material === 'custom') {
    const si = toothIn(tooth)
    return {
      shear: si('shearStrengthMpa'),
      tensile: si('tensileStrengthMpa'),
      bearing: si('bearingStrengthMpa'),
      workShear: si('workShearMpa'),
      workTensile: si('workTensileMpa'),
      workBearing: si('workBearingMpa'),
      modulus: null,
      poisson: poissonOf.other,
    }
  }
  const material = materialOf(tooth.material)
  return { ...material, poisson: material.family === 'metal' ? poissonOf.metal : poissonOf.other }
}

import { assumedRowShare, climbSlopeOf, rowStiffnessOf } from '../geometry/drive-tooth.ts'
import { rowSpringsOf, type RowSprings } from '../geometry/row-springs.ts'
import { materialOf } from '../reference/materials.ts'
import { coldPretension, shrinkage, tightSpanOf, type LoopHold } from '../geometry/held-loop.ts'
import { ladderStiffness, stopSpringOf, type StopSpring } from '../geometry/stop-spring.ts'
import { bearingPartOf } from './bearing.ts'
import { jointPartOf } from './joint.ts'
import type { ToothPart, TrackPart } from './parts.ts'
import { shaftPartOf, type ShaftPart } from './shaft.ts'
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
 * Loops and sprocket in SI, at the temperature of the air.
 *
 * Advance per turn a = z p;  pitch radius r = a/2π;  engaged teeth z_e = max(1, ⌊z wrap/360°⌋).
 *
 * @param airTemperature °C
 */
export function trackPartOf(track: Build['track'], airTemperature: number): TrackPart {
  const si = trackIn(track)
  const pitch = si('pitchMm')
  const advance = track.sprocketTeeth * pitch
  const massPerMetre = si('massGPerM')
  const tooth = track.tooth === undefined ? null : toothPartOf(track.tooth, si('knockdownPercent'))
  // 1e-9: an exact share of a turn is not to be lost to the last digit
  const engagedTeeth = Math.max(1, Math.floor((track.sprocketTeeth * track.wrapDegrees) / 360 + 1e-9))
  const share = si('sharePercent')
  const loop = loopPartOf(track, airTemperature, advance / fullTurn)
  const springs = springsOf(track, tooth, loop.pitchError, engagedTeeth)
  return {
    count: track.count,
    pitch,
    sprocketTeeth: track.sprocketTeeth,
    loopPitches: track.loopPitches,
    advance,
    radius: advance / fullTurn,
    massPerMetre,
    loopMass: massPerMetre * track.loopPitches * pitch,
    length: loop.length,
    tightSpan: loop.tightSpan,
    pitchError: loop.pitchError,
    hold: loop.hold,
    pretensionGiven: track.pretensionN !== undefined,
    enclosedArea: si('enclosedAreaCm2'),
    workingTension: si('workingTensionN') ?? workingShareOf(si('breakingTensionN')),
    breakingTension: si('breakingTensionN'),
    wrap: si('wrapDegrees'),
    engagedTeeth,
    teethAcross: track.teethAcross,
    share,
    toothShare: assumedRowShare(share, engagedTeeth) / track.teethAcross,
    loopStiffness: si('loopStiffnessN'),
    springs: springs?.rows ?? null,
    stopSpring: springs === null ? null : stopSpringIn(springs, engagedTeeth, loop),
    tooth,
    shaft: track.shaft === undefined ? null : sprocketShaftOf(track.shaft),
    internalDrag: si('internalDragN'),
    internalDragPerSpeed: si('internalDragNPerMps'),
  }
}

/** What a loop bears for good where only what breaks it is known, N. *Source:* assumption. */
function workingShareOf(breaking: number | null): number | null {
  return breaking === null ? null : workingShare * breaking
}

function sprocketShaftOf(shaft: NonNullable<Build['track']['shaft']>): ShaftPart {
  const si = shaftIn(shaft)
  return shaftPartOf({
    diameter: si('diameterMm'),
    material: materialOf(shaft.material),
    span: si('spanMm'),
    overhang: si('overhangMm'),
    joint: shaft.joint === undefined ? null : jointPartOf(shaft.joint),
    bearing: shaft.bearing === undefined ? null : bearingPartOf(shaft.bearing),
  })
}

/** A loop on its wheels, at the temperature of the air. */
interface LoopPart {
  readonly length: number
  readonly tightSpan: number
  readonly pitchError: number
  readonly hold: LoopHold
}

/**
 * The loop where it is used: what it shrinks more than the frame tightens a fixed one and shortens its pitch.
 *
 * s = (α_loop − α_frame)(T_assembly − T_air);  e − p s;  fixed, pretension given: N_0 = max(0, pretension + S s).
 *
 * *Source:* thermal expansion and Hooke's law. A loop with cords follows the cord: its material is the cords'.
 */
function loopPartOf(track: Build['track'], airTemperature: number, radius: number): LoopPart {
  const si = trackIn(track)
  const pitch = si('pitchMm')
  const length = track.loopPitches * pitch
  const tightSpan = tightSpanOf(si('tightSpanMm'), pitch, length, radius * si('wrapDegrees'))
  const given = si('pretensionN')
  const strain = strainOf(track, airTemperature)
  const stiffness = si('loopStiffnessN')
  const grows = track.tensioner === 'fixed' && given !== null && stiffness !== null && strain !== 0
  return {
    length,
    tightSpan,
    pitchError: si('pitchErrorMm') - pitch * strain,
    hold: {
      tensioner: track.tensioner,
      pretension: grows ? coldPretension(given, stiffness, strain) : (given ?? 0),
      tightShare: tightSpan / length,
    },
  }
}

/** What the loop shrinks more than the frame; 0 without its material. */
function strainOf(track: Build['track'], airTemperature: number): number {
  if (track.loopMaterial === undefined) return 0
  const [loop, frame] = [materialOf(track.loopMaterial), materialOf(track.frameMaterial)]
  const assembly = trackIn(track)('assemblyTemperatureC')
  return shrinkage(loop.expansion, frame.expansion, assembly, airTemperature)
}

/** The rows as springs, and what they are made from. */
interface TrackSprings {
  readonly rows: RowSprings
  readonly rowStiffness: number
  readonly loopStiffness: number
  readonly pitch: number
}

/** The rows as springs, where loop and tooth have a stiffness. */
function springsOf(
  track: Build['track'],
  tooth: ToothPart | null,
  pitchError: number,
  engagedTeeth: number,
): TrackSprings | null {
  const si = trackIn(track)
  const loopStiffness = si('loopStiffnessN')
  if (loopStiffness === null || tooth === null || tooth.modulus === null) return null
  const { root, width, loadHeight, modulus, poisson } = tooth
  const rowStiffness = rowStiffnessOf({ root, width, loadHeight, modulus, poisson }, track.teethAcross)
  const pitch = si('pitchMm')
  return {
    rows: rowSpringsOf(rowStiffness, loopStiffness, pitch, pitchError, engagedTeeth),
    rowStiffness,
    loopStiffness,
    pitch,
  }
}

/** What a held loop and its teeth are as a spring. */
function stopSpringIn(springs: TrackSprings, engagedTeeth: number, loop: LoopPart): StopSpring {
  const { rowStiffness, loopStiffness, pitch } = springs
  const ladder = ladderStiffness(rowStiffness, loopStiffness / pitch, engagedTeeth)
  const { tensioner, pretension, tightShare } = loop.hold
  return stopSpringOf(
    ladder,
    loop.tightSpan,
    loopStiffness,
    tensioner === 'fixed' ? tightShare : null,
    pretension,
  )
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
  const { shear, tensile, bearing, workShear, workTensile, workBearing, modulus, family } = materialOf(
    tooth.material,
  )
  const poisson = family === 'metal' ? poissonOf.metal : poissonOf.other
  return { shear, tensile, bearing, workShear, workTensile, workBearing, modulus, poisson }
}

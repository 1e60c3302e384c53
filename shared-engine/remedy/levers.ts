import type { Build, Stage } from '../entries/schema.ts'
import { chainSizeIds } from '../reference/chains.ts'
import { materialIds } from '../reference/materials.ts'

/** An entry that a builder can change in the workshop or buy otherwise. */
export interface Lever {
  readonly path: string
  /** Sizes as they are sold or set, in the entry's bench unit; absent for a choice. */
  readonly step?: number
  /** The only way that makes sense: less drag, a higher rating. Absent: either. */
  readonly way?: 'less' | 'more'
  /** How far it can sensibly go, inside the entry's range. */
  readonly most?: number
  /** Choices of a list instead of numbers. */
  readonly choices?: readonly string[]
}

const tenth = 0.1

/** Levers of every machine; those whose group or entry it lacks drop out. Steps: common practice, no source. */
const commonLevers: readonly Lever[] = [
  { path: 'pack.series', step: 1 },
  { path: 'pack.capacityMah', step: 100, way: 'more' },
  { path: 'pack.wiringResistanceMilliohm', step: tenth, way: 'less' },
  { path: 'pack.continuousC', step: 1, way: 'more' },
  { path: 'pack.burstC', step: 1, way: 'more' },
  { path: 'controller.throttleCapPercent', step: 1 },
  { path: 'controller.currentLimitAmps', step: 1 },
  { path: 'controller.continuousAmps', step: 5, way: 'more' },
  { path: 'controller.burstAmps', step: 5, way: 'more' },
  { path: 'controller.maxElectricalRpm', step: 1000, way: 'more' },
  { path: 'controller.thermalResistanceKPerW', step: 0.01, way: 'less' },
  { path: 'motor.thermalResistanceKPerW', step: 0.01, way: 'less' },
  { path: 'track.sprocketTeeth', step: 1 },
  // More than this the loop cannot come round without crossing itself [assumption].
  { path: 'track.wrapDegrees', step: 1, most: 270 },
  { path: 'track.teethAcross', step: 1 },
  { path: 'track.pretensionN', step: 1 },
  { path: 'track.breakingTensionN', step: 10, way: 'more' },
  { path: 'track.knockdownPercent', step: 1, way: 'more' },
  { path: 'track.tooth.widthMm', step: tenth },
  { path: 'track.tooth.rootMm', step: tenth },
  { path: 'track.tooth.heightMm', step: tenth },
  { path: 'track.tooth.flankDegrees', step: 1 },
  { path: 'track.tooth.material', choices: materialIds },
  { path: 'vehicle.loadKg', step: tenth, way: 'less' },
  { path: 'vehicle.towForceN', step: 1, way: 'less' },
  { path: 'vehicle.contactLengthMm', step: 1 },
  { path: 'vehicle.gaugeMm', step: 1 },
  { path: 'vehicle.cgHeightMm', step: 1 },
  { path: 'vehicle.cgAheadMm', step: 1 },
  { path: 'cooling.radiatorWPerK', step: 0.5, way: 'more' },
  { path: 'service.loadPercent', step: 1, way: 'less' },
]

const shaftLevers: readonly Lever[] = [
  { path: 'shaftDiameterMm', step: tenth },
  { path: 'shaftMaterial', choices: materialIds },
]

const wheelLevers: readonly Lever[] = [
  { path: 'driverTeeth', step: 1 },
  { path: 'drivenTeeth', step: 1 },
]

const stageLevers: Readonly<Record<Stage['kind'], readonly Lever[]>> = {
  gear: [
    ...wheelLevers,
    { path: 'faceWidthMm', step: tenth },
    // Modules that are cut everywhere: ISO 54, first series, come in wider steps; 0.05 is the finest of them.
    { path: 'moduleMm', step: 0.05 },
    { path: 'driverMaterial', choices: materialIds },
    { path: 'drivenMaterial', choices: materialIds },
  ],
  belt: [...wheelLevers, { path: 'widthMm', step: 1 }],
  chain: [...wheelLevers, { path: 'strands', step: 1 }, { path: 'size', choices: chainSizeIds }],
  fixed: [{ path: 'ratio', step: 0.01 }],
}

/**
 * The entries that a builder can change on this machine. The factor for shock (`service.factor`) is none of them: taking it
 * lower changes no part.
 */
export function leversOf(build: Build): readonly Lever[] {
  const ofStages = build.stages.flatMap((stage, at) =>
    [...stageLevers[stage.kind], ...shaftLevers].map((lever) => ({
      ...lever,
      path: `stages.${at}.${lever.path}`,
    })),
  )
  const ofAccessories = build.accessories.flatMap((_, at) => [
    { path: `accessories.${at}.watts`, step: 1, way: 'less' as const },
    { path: `accessories.${at}.converterAmps`, step: tenth, way: 'more' as const },
  ])
  return [...commonLevers, ...ofStages, ...ofAccessories]
}

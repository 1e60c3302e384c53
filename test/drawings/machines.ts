import { machineOf } from '../../shared-engine/machine/machine.ts'
import type { Machine } from '../../shared-engine/machine/parts.ts'
import { completeBuild } from '../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../shared-engine/entries/schema.ts'

/** Invented machines for drawings (demo data), chosen so that every kind of part is drawn at least once. */
const ground = { model: 'coefficient', rollingCoefficient: 0.08, gripCoefficient: 0.7, slipPercent: 4 }
const motor = {
  kvRpmPerVolt: 560,
  resistanceMilliohm: 18,
  noLoadAmps: 1.9,
  noLoadVolts: 20,
  poleCount: 14,
  ratedMaxRpm: 24000,
  continuousAmps: 80,
  burstAmps: 150,
  heatCapacityJPerK: 320,
  thermalResistanceKPerW: 0.6,
}
const tooth = { heightMm: 6, rootMm: 9, widthMm: 22, material: 'tpu-95a-printed' }

/** A quick single track: one pair of gear wheels with a 9-tooth pinion, then a belt. */
const quick = {
  format: 'pitchline-build',
  version: 2,
  name: 'Sled hare',
  pack: {
    chemistry: 'lipo',
    series: 12,
    capacityMah: 5000,
    cellResistanceMilliohm: 2.2,
    continuousC: 30,
    burstC: 60,
  },
  controller: { currentLimitAmps: 140, continuousAmps: 100, burstAmps: 160 },
  motor,
  stages: [
    {
      kind: 'gear',
      driverTeeth: 9,
      drivenTeeth: 31,
      moduleMm: 1.5,
      faceWidthMm: 14,
      driverMaterial: 'steel-c45',
      drivenMaterial: 'steel-c45',
    },
    { kind: 'belt', driverTeeth: 22, drivenTeeth: 36, profile: 'H8M', widthMm: 20, centreMm: 150 },
  ],
  track: {
    pitchMm: 30,
    sprocketTeeth: 9,
    loopPitches: 66,
    massGPerM: 900,
    pretensionN: 60,
    breakingTensionN: 2600,
    tooth,
  },
  vehicle: {
    massKg: 24,
    loadKg: 8,
    onTrackPercent: 75,
    contactLengthMm: 560,
    contactWidthMm: 180,
    cgHeightMm: 160,
    cgAheadMm: 290,
  },
  ground,
}

/** A twin-track hauler on soil: a chain after a pair of gear wheels, four motors, a slope. */
const hauler = {
  ...quick,
  name: 'Wood hauler',
  pack: {
    chemistry: 'lifepo4',
    series: 16,
    parallel: 4,
    capacityMah: 60000,
    cellResistanceMilliohm: 1.6,
    continuousC: 1,
    burstC: 3,
  },
  motor: { ...motor, kvRpmPerVolt: 90, resistanceMilliohm: 60, ratedMaxRpm: 6000, poleCount: 20, count: 2 },
  stages: [
    {
      kind: 'gear',
      driverTeeth: 17,
      drivenTeeth: 68,
      moduleMm: 2,
      faceWidthMm: 20,
      driverMaterial: 'steel-case',
      drivenMaterial: 'steel-c45',
    },
    { kind: 'chain', driverTeeth: 13, drivenTeeth: 38, size: '08B', centreMm: 240 },
  ],
  track: {
    pitchMm: 60,
    sprocketTeeth: 11,
    loopPitches: 62,
    massGPerM: 6200,
    count: 2,
    internalDragN: 90,
    tooth: { ...tooth, heightMm: 18, rootMm: 26, widthMm: 60 },
  },
  vehicle: {
    massKg: 120,
    loadKg: 80,
    contactLengthMm: 1150,
    contactWidthMm: 200,
    gaugeMm: 700,
    cgHeightMm: 420,
    cgAheadMm: 600,
  },
  ground: {
    model: 'soil',
    gradePercent: 18,
    soil: { n: 0.7, kc: 5, kphi: 1500, cohesionKpa: 4, frictionDegrees: 28, shearModulusMm: 25 },
  },
}

/** A small crawler with a bought gearbox. */
const crawler = {
  ...quick,
  name: 'Culvert crawler',
  pack: { chemistry: 'liion', series: 6, parallel: 2, capacityMah: 6000, cellResistanceMilliohm: 18 },
  motor: { ...motor, kvRpmPerVolt: 240, resistanceMilliohm: 120, count: 2 },
  stages: [{ kind: 'fixed', ratio: 18.5, efficiencyPercent: 85 }],
  track: { pitchMm: 12, sprocketTeeth: 14, loopPitches: 74, massGPerM: 220, count: 2 },
  vehicle: { massKg: 6.5, contactLengthMm: 240, contactWidthMm: 45, gaugeMm: 220 },
}

/** Six reductions: the most that a row has to hold. */
const long = {
  ...hauler,
  name: 'Long train',
  stages: [...quick.stages, ...hauler.stages, ...crawler.stages, quick.stages[0]],
}

/** Motor straight on the sprocket. */
const direct = { ...quick, name: 'Direct', stages: [] }

const bearing = { kind: 'ball', dynamicN: 9500 }

/** Everything that can be drawn and need not be: wires, fuse, supplies, coolant, joints, bearings, limiter, hook, belly. */
const fitted = {
  ...quick,
  name: 'Fitted hare',
  pack: { ...quick.pack, fuseAmps: 150 },
  motor: {
    ...motor,
    joint: { kind: 'flat', lengthMm: 8, flatDepthMm: 0.5, shaftDiameterMm: 8, shaftMaterial: 'steel-c45' },
  },
  stages: [
    {
      ...quick.stages[0],
      shaftDiameterMm: 12,
      shaftMaterial: 'steel-c45',
      shaftSpanMm: 60,
      joint: { kind: 'pin', pinMm: 3, pinMaterial: 'steel-c45' },
      bearing,
      slipTorqueNm: 9,
    },
    {
      ...quick.stages[1],
      shaftDiameterMm: 15,
      shaftMaterial: 'steel-c45',
      joint: { kind: 'clamp', clampForceN: 6000, friction: 0.15 },
      bearing: { ...bearing, kind: 'roller' },
    },
  ],
  track: {
    ...quick.track,
    tensioner: 'sprung',
    shaft: { diameterMm: 15, material: 'steel-c45', joint: { kind: 'key', lengthMm: 20 }, bearing },
  },
  vehicle: { ...quick.vehicle, towForceN: 120, towHeightMm: 140, clearanceMm: 45 },
  cooling: { kind: 'liquid', flowLPerMin: 3, coolant: 'glycol40', radiatorWPerK: 14, capKpa: 50 },
  wires: [
    { name: 'Main', circuit: 'pack', areaMm2: 16, lengthM: 1.2 },
    { name: 'Phases', circuit: 'motor', areaMm2: 10, lengthM: 0.8 },
  ],
  stepDowns: [
    { name: 'Radio', volts: 5, amps: 3 },
    { name: 'Pump', volts: 12, amps: 5 },
  ],
}

export const storedMachines = { quick, hauler, crawler, long, direct, fitted } as const

export type DrawnMachine = keyof typeof storedMachines

export const drawnMachines: Readonly<Record<DrawnMachine, { machine: Machine; parallel: number }>> = {
  quick: machineFrom(quick),
  hauler: machineFrom(hauler),
  crawler: machineFrom(crawler),
  long: machineFrom(long),
  direct: machineFrom(direct),
  fitted: machineFrom(fitted),
}

function machineFrom(stored: unknown): { machine: Machine; parallel: number } {
  const build = completeBuild(stored as StoredBuild)
  return { machine: machineOf(build), parallel: build.pack.parallel }
}

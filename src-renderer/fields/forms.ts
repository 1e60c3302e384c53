/** A run of entries under a heading. */
export interface Section {
  /** Empty: right under the part's name. */
  readonly heading: string
  /** Keys of the entries after the part's group; lists written as `*` (see `groupOfPart`). */
  readonly entries: readonly string[]
  /** The group that may be absent whole, and what a new one starts with. */
  readonly whole?: string
}

/** The fields of each part, in the order in which a builder fills them in: what is on the label first. */
export const forms: Readonly<Record<string, readonly Section[]>> = {
  build: [{ heading: '', entries: ['name', 'notes'] }],
  pack: [
    { heading: '', entries: ['chemistry', 'series', 'parallel', 'capacityMah', 'continuousC', 'burstC'] },
    { heading: 'Resistance', entries: ['cellResistanceMilliohm', 'wiringResistanceMilliohm'] },
  ],
  controller: [
    { heading: '', entries: ['currentLimitAmps', 'throttleCapPercent'] },
    { heading: 'Ratings', entries: ['continuousAmps', 'burstAmps', 'maxElectricalRpm', 'maxTemperatureC'] },
    {
      heading: 'Loss and heat',
      entries: ['resistanceMilliohm', 'thermalResistanceKPerW', 'heatCapacityJPerK'],
    },
    { heading: 'Ripple on the supply', entries: ['pwmKhz', 'busCapacitanceMicrofarad'] },
  ],
  motor: [
    {
      heading: '',
      entries: ['kvRpmPerVolt', 'resistanceMilliohm', 'noLoadAmps', 'noLoadVolts', 'viscousPercent', 'count'],
    },
    { heading: 'Ratings', entries: ['ratedMaxRpm', 'continuousAmps', 'burstAmps', 'maxTemperatureC'] },
    { heading: 'Rotor', entries: ['poleCount', 'magnet', 'rotorInertiaGcm2'] },
    { heading: 'Heat', entries: ['thermalResistanceKPerW', 'heatCapacityJPerK'] },
  ],
  stage: [
    {
      heading: '',
      entries: ['kind', 'driverTeeth', 'drivenTeeth', 'ratio', 'profile', 'size', 'efficiencyPercent'],
    },
    {
      heading: 'Strength',
      entries: [
        'moduleMm',
        'faceWidthMm',
        'pressureAngleDegrees',
        'driverMaterial',
        'drivenMaterial',
        'finish',
        'widthMm',
        'allowableTensionN',
        'strands',
        'centreMm',
      ],
    },
    { heading: 'Driven shaft', entries: ['shaftDiameterMm', 'shaftMaterial', 'drivenInertiaGcm2'] },
  ],
  track: [
    { heading: '', entries: ['sprocketTeeth', 'pitchMm', 'loopPitches', 'massGPerM', 'count'] },
    { heading: 'Loop', entries: ['pretensionN', 'breakingTensionN', 'internalDragN', 'internalDragNPerMps'] },
    {
      heading: 'Drive tooth',
      whole: 'tooth',
      entries: [
        'tooth.material',
        'tooth.shearStrengthMpa',
        'tooth.tensileStrengthMpa',
        'tooth.bearingStrengthMpa',
        'tooth.heightMm',
        'tooth.rootMm',
        'tooth.widthMm',
        'tooth.loadHeightMm',
      ],
    },
    {
      heading: 'How the teeth share',
      entries: [
        'wrapDegrees',
        'teethAcross',
        'sharePercent',
        'knockdownPercent',
        'loopStiffnessN',
        'pitchErrorMm',
      ],
    },
    {
      heading: 'Climbing out of mesh',
      whole: 'tooth',
      entries: ['tooth.flankDegrees', 'tooth.flankFriction', 'tooth.modulusMpa'],
    },
  ],
  vehicle: [
    { heading: '', entries: ['massKg', 'loadKg', 'towForceN', 'onTrackPercent'] },
    {
      heading: 'Patch and balance',
      entries: ['contactLengthMm', 'contactWidthMm', 'gaugeMm', 'cgHeightMm', 'cgAheadMm'],
    },
    { heading: 'Air', entries: ['frontalAreaM2', 'dragCoefficient'] },
  ],
  ground: [
    {
      heading: '',
      entries: [
        'model',
        'rollingCoefficient',
        'gripCoefficient',
        'slipPercent',
        'soil.n',
        'soil.kc',
        'soil.kphi',
        'soil.cohesionKpa',
        'soil.frictionDegrees',
        'soil.shearModulusMm',
      ],
    },
    {
      heading: 'Place',
      entries: ['gradePercent', 'airTemperatureC', 'altitudeM', 'turnFriction', 'skiFriction'],
    },
  ],
  cooling: [{ heading: '', whole: 'cooling', entries: ['kind', 'flowLPerMin', 'coolant', 'radiatorWPerK'] }],
  accessories: [
    {
      heading: '',
      entries: ['*.name', '*.watts', '*.volts', '*.converterEfficiencyPercent', '*.converterAmps'],
    },
  ],
  service: [
    { heading: '', entries: ['stateOfChargePercent', 'reservePercent', 'packTemperatureC'] },
    { heading: 'Load', entries: ['loadPercent', 'windingTemperatureC', 'factor'] },
  ],
}

/** What stands in the list of parts; reductions are put in after the motor. */
export const partNames: Readonly<Record<string, string>> = {
  build: 'Name and notes',
  pack: 'Pack',
  controller: 'Controller',
  motor: 'Motor',
  track: 'Track',
  vehicle: 'Machine',
  ground: 'Ground',
  cooling: 'Cooling',
  accessories: 'Accessories',
  service: 'How it is run',
}

/** "Reduction 2" for `stage.2`. */
export function partName(part: string): string {
  const stage = /^stage\.(\d+)$/.exec(part)
  return stage === null ? (partNames[part] ?? part) : `Reduction ${stage[1] ?? ''}`
}

/** Parts from pack to ground, as the power path draws them, then what stands beside it. */
export function partsOf(stageCount: number): readonly string[] {
  const stages = Array.from({ length: stageCount }, (_, index) => `stage.${index + 1}`)
  return [
    'pack',
    'controller',
    'motor',
    ...stages,
    'track',
    'vehicle',
    'ground',
    'cooling',
    'accessories',
    'service',
    'build',
  ]
}

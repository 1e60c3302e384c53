import { describe, expect, it } from 'vitest'
import { withEntry } from '../../../shared-engine/entries/edit.ts'
import { readStoredBuildValue } from '../../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { sentenceOf } from '../../../shared-engine/mistakes/catalogue.ts'
import { fullBuild, plainBuild, soilBuild } from '../../fixtures/build/plain.ts'

type Changes = Readonly<Record<string, unknown>>

const changed = (build: StoredBuild, changes: Changes) =>
  Object.entries(changes).reduce((edited, [path, value]) => withEntry(edited, path, value), build)

/** Coolant driven by a pump that takes so many watts of the pack. */
const pumped = (pumpWatts: number) => ({
  kind: 'liquid',
  flowLPerMin: 1,
  coolant: 'water',
  radiatorWPerK: 10,
  pumpWatts,
})

function told(build: StoredBuild, changes: Changes): string[] {
  const read = readStoredBuildValue(changed(build, changes))
  return read.ok ? [] : read.mistakes.map(sentenceOf)
}

/** A rule: what still passes, what no longer does, and the sentence for it. */
const cases: readonly (readonly [
  name: string,
  build: StoredBuild,
  passes: Changes,
  breaks: Changes,
  sentence: string,
])[] = [
  [
    'poles come in pairs',
    plainBuild(),
    { 'motor.poleCount': 12 },
    { 'motor.poleCount': 13 },
    'motor.poleCount is 13 poles; allowed: an even number: poles come in pairs.',
  ],
  [
    'the free run is possible',
    plainBuild(),
    { 'motor.noLoadAmps': 7.99, 'motor.resistanceMilliohm': 1000, 'motor.noLoadVolts': 8 },
    { 'motor.noLoadAmps': 8, 'motor.resistanceMilliohm': 1000, 'motor.noLoadVolts': 8 },
    'motor.noLoadAmps is 8 A; allowed: below 8 A: motor.noLoadVolts over motor.resistanceMilliohm.',
  ],
  [
    'a driven tooth is engaged',
    plainBuild(),
    { 'track.wrapDegrees': 30 },
    { 'track.wrapDegrees': 29.9 },
    'track.wrapDegrees is 29.9°; allowed: from 30°: less leaves none of the 12 teeth of track.sprocketTeeth engaged.',
  ],
  [
    'the pitch error is below a tenth of the pitch, either way',
    plainBuild(),
    { 'track.pitchErrorMm': -1.99 },
    { 'track.pitchErrorMm': -2 },
    'track.pitchErrorMm is -2 mm; allowed: less than a tenth of track.pitchMm either way: 2 mm.',
  ],
  [
    'the load presses below the tip',
    fullBuild(),
    { 'track.tooth.loadHeightMm': 8.99 },
    { 'track.tooth.loadHeightMm': 9 },
    'track.tooth.loadHeightMm is 9 mm; allowed: below track.tooth.heightMm, which is 9 mm.',
  ],
  [
    'the reserve is below the charge',
    fullBuild(),
    { 'service.reservePercent': 89.9 },
    { 'service.reservePercent': 90 },
    'service.reservePercent is 90%; allowed: below service.stateOfChargePercent, which is 90%.',
  ],
  [
    'the reserve that is left at its default is held to it too',
    plainBuild(),
    { 'service.stateOfChargePercent': 21 },
    { 'service.stateOfChargePercent': 20 },
    'service.reservePercent is 20%; allowed: below service.stateOfChargePercent, which is 20%.',
  ],
  [
    // r = p z / 2π: 5 mm · (20 + 40) / 2π = 47.746 mm.
    'belt wheels fit their centres',
    fullBuild(),
    { 'stages.1.centreMm': 47.75 },
    { 'stages.1.centreMm': 47.74 },
    'stages.1.centreMm is 47.74 mm; allowed: above 47.7465 mm, the sum of the pitch radii of stages.1.driverTeeth and stages.1.drivenTeeth.',
  ],
  [
    // r = p / (2 sin(π/z)): 12.7/2 · (1/sin 15° + 1/sin 7.5°) = 73.184 mm.
    'chain wheels fit their centres',
    fullBuild(),
    { 'stages.2.centreMm': 73.19 },
    { 'stages.2.centreMm': 73.18 },
    'stages.2.centreMm is 73.18 mm; allowed: above 73.1838 mm, the sum of the pitch radii of stages.2.driverTeeth and stages.2.drivenTeeth.',
  ],
  [
    'a belt without an open rating needs its maker’s',
    fullBuild(),
    { 'stages.1.profile': 'XL', 'stages.1.allowableTensionN': undefined },
    { 'stages.1.allowableTensionN': undefined, tolerances: undefined },
    "stages.1.allowableTensionN is missing; allowed: 1 to 1,000,000 N, from the belt's maker, since stages.1.profile H5M has no open rating.",
  ],
  [
    'soil needs the patch on it',
    soilBuild(),
    { 'vehicle.contactWidthMm': 2 },
    { 'vehicle.contactWidthMm': undefined },
    'vehicle.contactWidthMm is missing; allowed: 2 to 5,000 mm, since ground.model is soil.',
  ],
  [
    // k = k_c/b + k_φ with b = 150 mm: −15/0.15 + 100 = 0.
    'soil is stiff at all',
    soilBuild(),
    { 'ground.soil.kc': -15, 'ground.soil.kphi': 100.1 },
    { 'ground.soil.kc': -15, 'ground.soil.kphi': 99.9 },
    'ground.soil.kc gives -0.1 kN/m^(n+2) as the stiffness of the soil; allowed: above 0: ground.soil.kc over the smaller of vehicle.contactLengthMm and vehicle.contactWidthMm, plus ground.soil.kphi.',
  ],
  [
    // V_oc²/(4 R_b) = (6 · 4.2)²/(4 · 6 · 0.01) at 25 °C = 2646 W; a converter of 50 % doubles what it asks for.
    'the pack feeds its accessories',
    changed(plainBuild(), { 'pack.cellResistanceMilliohm': 10, 'service.packTemperatureC': 25 }),
    { accessories: [{ name: 'winch', watts: 1322, converterEfficiencyPercent: 50 }] },
    { accessories: [{ name: 'winch', watts: 1324, converterEfficiencyPercent: 50 }] },
    'the pack cannot feed its accessories: accessories asks for 2648 W; allowed: up to 2646 W, the most that pack.series and pack.cellResistanceMilliohm can give.',
  ],
  [
    // The pump draws from the pack too (`docs/model.md` §2): 2646 W as above.
    'the pack feeds its pump',
    changed(plainBuild(), { 'pack.cellResistanceMilliohm': 10, 'service.packTemperatureC': 25 }),
    { cooling: pumped(2645) },
    { cooling: pumped(2647) },
    'the pack cannot feed its accessories: cooling.pumpWatts asks for 2647 W; allowed: up to 2646 W, the most that pack.series and pack.cellResistanceMilliohm can give.',
  ],
  [
    // Behind a supply its efficiency counts, 50 %, not the converter's: 1000 + 2 · 822 = 2644 W, 1000 + 2 · 824 = 2648 W.
    'the pack feeds pump and supplies',
    changed(plainBuild(), {
      'pack.cellResistanceMilliohm': 10,
      'service.packTemperatureC': 25,
      cooling: pumped(1000),
      stepDowns: [{ name: 'supply', volts: 12, amps: 100, efficiencyPercent: 50 }],
    }),
    { accessories: [{ name: 'winch', watts: 822, stepDown: 0, converterEfficiencyPercent: 10 }] },
    { accessories: [{ name: 'winch', watts: 824, stepDown: 0, converterEfficiencyPercent: 100 }] },
    'the pack cannot feed its accessories: accessories asks for 2648 W with cooling.pumpWatts; allowed: up to 2646 W, the most that pack.series and pack.cellResistanceMilliohm can give.',
  ],
  [
    // 0.017241 · 1/0.05 = 344.82 mΩ of wire (IEC 60028), more than may be entered: 25.2²/(4 · 0.40482) = 392.174 W.
    'the pack feeds its accessories through its wires',
    changed(plainBuild(), {
      'pack.cellResistanceMilliohm': 10,
      'pack.wiringResistanceMilliohm': undefined,
      'service.packTemperatureC': 25,
      wires: [{ name: 'thin', circuit: 'pack', areaMm2: 0.05, lengthM: 1 }],
    }),
    { accessories: [{ name: 'winch', watts: 392 }] },
    { accessories: [{ name: 'winch', watts: 393 }] },
    'the pack cannot feed its accessories: accessories asks for 393 W; allowed: up to 392.174 W, the most that pack.series and pack.cellResistanceMilliohm can give.',
  ],
  [
    // As cold as the air, below what may be entered; the cells' rule is held at −20 °C: 25.2²/(4 · 0.06 · 2^(45/20)) = 556.253 W.
    'the pack feeds its accessories in the cold',
    changed(plainBuild(), {
      'pack.cellResistanceMilliohm': 10,
      'service.packTemperatureC': undefined,
      'ground.airTemperatureC': -50,
    }),
    { accessories: [{ name: 'winch', watts: 556 }] },
    { accessories: [{ name: 'winch', watts: 557 }] },
    'the pack cannot feed its accessories: accessories asks for 557 W; allowed: up to 556.253 W, the most that pack.series and pack.cellResistanceMilliohm can give.',
  ],
  [
    'a flat leaves more than half of the shaft',
    fullBuild(),
    { 'track.shaft.joint.flatDepthMm': 9.99 },
    { 'track.shaft.joint.flatDepthMm': 10 },
    'track.shaft.joint.flatDepthMm is 10 mm; allowed: below 10 mm, half of track.shaft.diameterMm.',
  ],
  [
    'a key is made for its shaft',
    fullBuild(),
    { 'stages.0.shaftDiameterMm': 6 },
    { 'stages.0.shaftDiameterMm': 5.9 },
    'stages.0.shaftDiameterMm is 5.9 mm; allowed: 6 to 95 mm where stages.0.joint.kind is key: use a flat, pin or screws.',
  ],
  [
    'a joint stands on a shaft that is known',
    fullBuild(),
    { 'stages.0.joint': undefined, 'stages.0.bearing': undefined, 'stages.0.shaftDiameterMm': undefined },
    { 'stages.0.joint': undefined, 'stages.0.shaftDiameterMm': undefined },
    'stages.0.shaftDiameterMm is missing; allowed: 0.5 to 300 mm, since stages.0.bearing stands on it.',
  ],
  [
    // inv 20° = 0.014904; −0.014904 · (18 + 54)/(2 tan 20°) = −1.474: shifts of −0.5 each are still in mesh, unless few teeth.
    'shifted wheels mesh',
    changed(fullBuild(), {
      'stages.0.driverTeeth': 10,
      'stages.0.drivenTeeth': 20,
      'stages.0.driverShift': -0.5,
    }),
    { 'stages.0.drivenShift': -0.11 },
    { 'stages.0.drivenShift': -0.12 },
    'stages.0.drivenShift is -0.12; allowed: more: with stages.0.driverShift the two wheels are cut so deep that they cannot mesh without play.',
  ],
  [
    'a wire has one size',
    fullBuild(),
    { 'wires.0.areaMm2': undefined, 'wires.0.awg': 9 },
    { 'wires.0.awg': 9 },
    'wires.0 is "areaMm2 and awg"; allowed: one of areaMm2, awg.',
  ],
  [
    'a wire behind a supply says which',
    fullBuild(),
    { 'wires.1.stepDown': undefined, 'wires.1.circuit': 'motor' },
    { 'wires.1.stepDown': undefined },
    'wires.1.stepDown is missing; allowed: the place of a supply in stepDowns, counted from 0, since wires.1.circuit is stepDown.',
  ],
  [
    'an accessory hangs behind a supply that there is',
    fullBuild(),
    { 'accessories.0.stepDown': 0 },
    { 'accessories.0.stepDown': 1 },
    'accessories.0.stepDown is 1; allowed: 0 to 0, the places in stepDowns.',
  ],
  [
    'a row of the pattern asks for one thing',
    fullBuild(),
    { 'service.pattern.rows.0.speedKmh': undefined, 'service.pattern.rows.0.brakePercent': 50 },
    { 'service.pattern.rows.0.speedKmh': undefined },
    'service.pattern.rows.0 is none of them; allowed: one of throttlePercent, speedKmh, speedPercent, brakePercent.',
  ],
  [
    'a tolerance speaks of an entry of the file',
    fullBuild(),
    { 'tolerances.stages.3.ratio': { plusMinus: 0.1, shape: 'uniform' } },
    { 'tolerances.stages.4.ratio': { plusMinus: 0.1, shape: 'uniform' } },
    'tolerances.stages.4.ratio names "stages.4.ratio", which is not an entry of this file; allowed: the path of an entry that the file has, such as track.pitchMm or stages.0.driverTeeth.',
  ],
  [
    'a tolerance speaks of a number',
    fullBuild(),
    { 'tolerances.pack.series': { plusMinus: 0, shape: 'uniform' } },
    { 'tolerances.pack.chemistry': { plusMinus: 0, shape: 'uniform' } },
    'tolerances.pack.chemistry is "liion", not a number; allowed: a tolerance for an entry that is a number.',
  ],
  [
    'a tolerance has one width',
    fullBuild(),
    { 'tolerances.vehicle.massKg': { plusMinusPercent: 1, shape: 'normal' } },
    { 'tolerances.vehicle.massKg': { plusMinusPercent: 1, plusMinus: 1, shape: 'normal' } },
    'tolerances.vehicle.massKg is given two widths; allowed: either plusMinusPercent or plusMinus.',
  ],
  [
    'an origin speaks of an entry of the file, not of a default',
    plainBuild(),
    { 'origins.pack.series': 'stated' },
    { 'origins.pack.parallel': 'stated' },
    'origins.pack.parallel names "pack.parallel", which is not an entry of this file; allowed: the path of an entry that the file has, such as track.pitchMm or stages.0.driverTeeth.',
  ],
  [
    'an origin speaks of an entry, not of a group',
    fullBuild(),
    { 'origins.track.pitchMm': 'measured' },
    { 'origins.track': 'measured' },
    'origins.track names "track", which is not an entry of this file; allowed: the path of an entry that the file has, such as track.pitchMm or stages.0.driverTeeth.',
  ],
]

describe('rules between entries', () => {
  it.each(cases)('%s', (_name, build, passes, breaks, sentence) => {
    expect(told(build, passes)).toEqual([])
    expect(told(build, breaks)).toEqual([sentence])
  })

  it('are told beside mistakes of single entries, which do not set them off themselves', () => {
    expect(
      told(plainBuild(), { 'motor.poleCount': 13, 'track.pitchMm': 'wide', 'track.pitchErrorMm': 5 }),
    ).toEqual([
      'track.pitchMm is "wide", not a number; allowed: 1 to 500 mm.',
      'motor.poleCount is 13 poles; allowed: an even number: poles come in pairs.',
    ])
  })

  it('a tolerance without a width is told', () => {
    expect(told(plainBuild(), { 'tolerances.pack.series': { shape: 'normal' } })).toEqual([
      'tolerances.pack.series is without a width; allowed: either plusMinusPercent or plusMinus.',
    ])
  })
})

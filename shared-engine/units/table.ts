import type { DisplayStep, KindUnits, QuantityKind, Unit } from './kinds.ts'
import * as exact from './factors.ts'

interface Extras {
  readonly per?: number
  readonly plus?: number
  readonly also?: readonly string[]
  readonly exactCase?: boolean
}

const unit = (symbol: string, times = 1, extras: Extras = {}): Unit => ({
  symbol,
  times,
  per: extras.per ?? 1,
  plus: extras.plus ?? 0,
  also: extras.also ?? [],
  exactCase: extras.exactCase ?? false,
})

/** A display in one unit, or in several by magnitude: `shown('m', 'km', 10000)`. */
const shown = (symbol: string, larger?: string, from = 0): readonly DisplayStep[] =>
  larger === undefined
    ? [{ symbol, from: 0 }]
    : [
        { symbol, from: 0 },
        { symbol: larger, from },
      ]

const kind = (
  bench: string,
  units: readonly [Unit, ...Unit[]],
  metric: readonly DisplayStep[] = shown(bench),
  imperial: readonly DisplayStep[] = metric,
): KindUnits => ({ engine: units[0].symbol, bench, units, metric, imperial })

const perThousand = { per: 1000 }
const inch = exact.metresPerInch
const foot = exact.metresPerFoot
const poundForce = exact.newtonsPerPoundForce

const millimetre = unit('mm', 1, {
  per: 1000,
  also: ['millimetre', 'millimetres', 'millimeter', 'millimeters'],
})
const centimetre = unit('cm', 1, { per: 100 })
const metre = unit('m', 1, { also: ['metre', 'metres', 'meter', 'meters'] })
const kilometre = unit('km', 1000)
const inches = unit('in', 254, { per: 10_000, also: ['inch', 'inches', '"', '″', '”'] })
const feet = unit('ft', 3048, { per: 10_000, also: ['foot', 'feet', "'", '′', '’'] })
const miles = unit('mi', 1_609_344, { per: 1000, also: ['mile', 'miles'] })
const second = unit('s', 1, { also: ['sec', 'second', 'seconds'] })
const minute = unit('min', 60, { also: ['minute', 'minutes'] })
const hour = unit('h', 3600, { also: ['hr', 'hour', 'hours'] })
const mil = unit('mil', 254, { per: 10_000_000, also: ['thou'] })
const lengthUnits = [metre, millimetre, centimetre, inches, feet, mil] as const
const areaUnits = [
  unit('m²', 1, { also: ['m2'] }),
  unit('cm²', 1, { per: 10_000, also: ['cm2'] }),
  unit('mm²', 1, { per: 1_000_000, also: ['mm2'] }),
  unit('in²', inch ** 2, { also: ['sq in'] }),
  unit('ft²', foot ** 2, { also: ['sq ft'] }),
] as const
const speedUnits = [
  unit('m/s', 1, { also: ['mps'] }),
  unit('km/h', 1000, { per: 3600, also: ['kmh', 'kph'] }),
  unit('mph', 1_609_344, { per: 3_600_000, also: ['mi/h'] }),
  unit('ft/s', foot, { also: ['fps'] }),
  unit('mm/s', 1, perThousand),
] as const
const percentUnit = unit('%', 1, { per: 100, also: ['percent'] })

/** Every quantity kind with the units it is read in and shown in. The first unit of each is the engine's. */
export const kindUnits: Readonly<Record<QuantityKind, KindUnits>> = {
  none: kind('', [unit(''), percentUnit]),
  text: kind('', [unit('')]),
  count: kind('', [unit('')]),
  pixel: kind('px', [unit('px')]),
  fraction: kind('%', [unit(''), percentUnit]),
  percent: kind('%', [unit('%', 1, { also: ['percent'] })]),

  length: kind('mm', lengthUnits, shown('mm'), shown('in')),
  // In mm whatever the rest is in: cutters are named by it (ISO 54); an inch gear is named by its diametral pitch.
  gearModule: kind('mm', lengthUnits),
  distance: kind(
    'm',
    [metre, kilometre, centimetre, millimetre, feet, miles, inches],
    shown('m', 'km', 1000),
    shown('ft', 'mi', exact.metresPerMile),
  ),
  kilometres: kind(
    'km',
    [unit('km'), unit('m', 1, perThousand), unit('mi', exact.metresPerMile, perThousand)],
    shown('km'),
    shown('mi'),
  ),
  litresPerMinute: kind('L/min', [unit('L/min', 1, { also: ['lpm'] })]),
  milliampereHours: kind('mAh', [unit('mAh')]),
  wattHoursPerKilometre: kind(
    'Wh/km',
    [unit('Wh/km'), unit('Wh/mi', 1000, { per: exact.metresPerMile })],
    shown('Wh/km'),
    shown('Wh/mi'),
  ),
  area: kind('m²', areaUnits, shown('m²'), shown('ft²')),
  // The same stored in other units: what a loop encloses in cm², a wire's copper in mm².
  loopArea: kind('cm²', areaUnits, shown('cm²'), shown('in²')),
  wireSection: kind('mm²', areaUnits),
  volume: kind(
    'L',
    [
      unit('m³'),
      unit('L', 1, { per: 1000, also: ['l', 'litre', 'litres'] }),
      unit('mL', 1, { per: 1_000_000 }),
    ],
    shown('L'),
  ),
  speed: kind('m/s', speedUnits, shown('km/h'), shown('mph')),
  // Stored in km/h, as a drive pattern asks for it.
  roadSpeed: kind('km/h', speedUnits, shown('km/h'), shown('mph')),
  acceleration: kind(
    'm/s²',
    [unit('m/s²'), unit('ft/s²', foot), unit('g', 9.80665)],
    shown('m/s²'),
    shown('ft/s²'),
  ),
  time: kind(
    's',
    [second, unit('ms', 1, perThousand), minute, hour],
    [
      { symbol: 's', from: 0 },
      { symbol: 'min', from: 600 },
      { symbol: 'h', from: 36_000 },
    ],
  ),
  duration: kind(
    'min',
    [second, minute, hour],
    [
      { symbol: 's', from: 0 },
      { symbol: 'min', from: 120 },
      { symbol: 'h', from: 7200 },
    ],
  ),
  switchingTime: kind('ns', [
    second,
    unit('ns', 1, { per: 1_000_000_000 }),
    unit('µs', 1, { per: 1_000_000 }),
  ]),
  life: kind('h', [second, hour, minute]),
  minutes: kind('min', [
    unit('min', 1, { also: ['minute', 'minutes'] }),
    unit('s', 1, { per: 60, also: ['sec', 'seconds'] }),
    unit('h', 60, { also: ['hr', 'hour', 'hours'] }),
  ]),
  hours: kind('h', [unit('h', 1, { also: ['hr', 'hour', 'hours'] }), unit('min', 1, { per: 60 })]),
  bearingSpeed: kind('mm/min', [unit('mm/min')]),
  frequency: kind('kHz', [unit('Hz'), unit('kHz', 1000)]),
  rpm: kind('rpm', [
    unit('rpm', 1, { also: ['r/min', '1/min', 'rev/min', 'min^-1'] }),
    unit('rev/s', 60, { also: ['rps'] }),
    unit('rad/s', 30, { per: Math.PI }),
  ]),
  angularSpeed: kind('rad/s', [
    unit('rad/s'),
    unit('rpm', Math.PI, { per: 30, also: ['r/min', '1/min', 'rev/min'] }),
  ]),
  angle: kind('°', [unit('rad', 1), unit('°', Math.PI, { per: 180, also: ['deg', 'degree', 'degrees'] })]),

  degrees: kind('°', [
    unit('°', 1, { also: ['deg', 'degree', 'degrees'] }),
    unit('rad', 180, { per: Math.PI }),
  ]),

  mass: kind(
    'kg',
    [
      unit('kg', 1, { also: ['kilo', 'kilos'] }),
      unit('g', 1, perThousand),
      unit('t', 1000),
      unit('lb', 45_359_237, { per: 100_000_000, also: ['lbs', 'lbm', 'pound', 'pounds'] }),
      unit('oz', exact.kilogramsPerOunce),
    ],
    shown('kg'),
    shown('lb'),
  ),
  linearDensity: kind(
    'g/m',
    [
      unit('kg/m'),
      unit('g/m', 1, perThousand),
      unit('lb/ft', exact.kilogramsPerPound, { per: foot }),
      unit('oz/ft', exact.kilogramsPerOunce, { per: foot }),
    ],
    shown('g/m', 'kg/m', 10),
    shown('lb/ft'),
  ),
  inertia: kind(
    'g·cm²',
    [
      unit('kg·m²'),
      unit('g·cm²', 1, { per: 10_000_000 }),
      unit('kg·cm²', 1, { per: 10_000 }),
      unit('oz·in²', exact.kilogramsPerOunce * inch ** 2),
      unit('lb·in²', exact.kilogramsPerPound * inch ** 2),
    ],
    shown('g·cm²', 'kg·m²', 0.1),
    shown('oz·in²'),
  ),
  density: kind(
    'kg/m³',
    [unit('kg/m³'), unit('g/cm³', 1000), unit('lb/ft³', exact.kilogramsPerPound, { per: foot ** 3 })],
    shown('kg/m³'),
    shown('lb/ft³'),
  ),

  force: kind(
    'N',
    [
      unit('N', 1, { also: ['newton', 'newtons'] }),
      unit('kN', 1000),
      unit('kgf', 980_665, { per: 100_000 }),
      unit('gf', exact.newtonsPerKilogramForce, perThousand),
      unit('lbf', poundForce, { also: ['lb', 'lbs'] }),
      unit('ozf', exact.newtonsPerOunceForce),
    ],
    shown('N', 'kN', 100_000),
    shown('lbf'),
  ),
  torque: kind(
    'N·m',
    [
      unit('N·m', 1, { also: ['Nm'] }),
      unit('mN·m', 1, { per: 1000, exactCase: true }),
      unit('N·cm', 1, { per: 100 }),
      unit('kgf·cm', exact.newtonsPerKilogramForce, { per: 100, also: ['kg·cm'] }),
      unit('lbf·ft', poundForce * foot, { also: ['ft·lbf', 'lb·ft', 'ft·lb'] }),
      unit('lbf·in', poundForce * inch, { also: ['in·lbf', 'lb·in', 'in·lb'] }),
      unit('ozf·in', exact.newtonsPerOunceForce * inch, { also: ['oz·in', 'in·oz'] }),
    ],
    shown('N·m'),
    shown('lbf·ft'),
  ),
  stress: kind(
    'MPa',
    [
      unit('Pa'),
      unit('kPa', 1000),
      unit('MPa', 1_000_000, { also: ['N/mm²'], exactCase: true }),
      unit('GPa', 1e9),
      unit('psi', poundForce, { per: inch ** 2, also: ['lbf/in²'] }),
      unit('ksi', 1000 * poundForce, { per: inch ** 2 }),
    ],
    shown('MPa'),
    shown('psi'),
  ),
  pressure: kind(
    'kPa',
    [
      unit('Pa'),
      unit('kPa', 1000),
      unit('MPa', 1_000_000, { exactCase: true }),
      unit('bar', 100_000),
      unit('psi', poundForce, { per: inch ** 2, also: ['lbf/in²'] }),
    ],
    shown('kPa'),
    shown('psi'),
  ),
  stiffness: kind(
    'N/m',
    [
      unit('N/m'),
      unit('N/mm', 1000),
      unit('kN/m', 1000),
      unit('lbf/in', poundForce, { per: inch, also: ['lb/in'] }),
    ],
    shown('N/m', 'kN/m', 100_000),
    shown('lbf/in'),
  ),
  dragPerSpeed: kind(
    'N/(m/s)',
    [
      unit('N/(m/s)', 1, { also: ['N·s/m'] }),
      unit('N/(km/h)', 3.6),
      unit('lbf/mph', poundForce * 3600, { per: exact.metresPerMile }),
    ],
    shown('N/(m/s)'),
    shown('lbf/mph'),
  ),
  soilCohesiveModulus: kind('kN/m^(n+1)', [unit('N/m^(n+1)'), unit('kN/m^(n+1)', 1000)]),
  soilFrictionalModulus: kind('kN/m^(n+2)', [unit('N/m^(n+2)'), unit('kN/m^(n+2)', 1000)]),

  volts: kind('V', [
    unit('V', 1, { also: ['volt', 'volts'] }),
    unit('mV', 1, { per: 1000, exactCase: true }),
  ]),
  amps: kind('A', [unit('A', 1, { also: ['amp', 'amps'] }), unit('mA', 1, { per: 1000, exactCase: true })]),
  ohms: kind(
    'mΩ',
    [
      unit('Ω', 1, { also: ['ohm', 'ohms'] }),
      unit('mΩ', 1, { per: 1000, also: ['mohms', 'milliohm', 'milliohms'], exactCase: true }),
    ],
    shown('mΩ', 'Ω', 10),
  ),
  watts: kind(
    'W',
    [
      unit('W', 1, { also: ['watt', 'watts'] }),
      unit('kW', 1000),
      unit('hp', exact.wattsPerHorsepower),
      unit('PS', exact.wattsPerMetricHorsepower),
    ],
    shown('W', 'kW', 10_000),
    shown('W', 'hp', 10_000),
  ),
  charge: kind(
    'mAh',
    [unit('A·s', 1, { also: ['C'] }), unit('mAh', 3.6), unit('Ah', 3600)],
    shown('mAh', 'Ah', 72_000),
  ),
  energy: kind('Wh', [unit('J'), unit('Wh', 3600), unit('kWh', 3_600_000), unit('kJ', 1000)]),
  cRate: kind('C', [unit('1/s'), unit('C', 1, { per: 3600, also: ['1/h'] })]),
  speedConstant: kind('rpm/V', [
    unit('rpm/V', 1, { also: ['Kv'] }),
    unit('rad/s/V', 30, { per: Math.PI, also: ['rad/(s·V)'] }),
  ]),
  torqueConstant: kind(
    'N·m/A',
    [
      unit('N·m/A', 1, { also: ['Nm/A', 'V·s/rad'] }),
      unit('mN·m/A', 1, { per: 1000, exactCase: true }),
      unit('lbf·in/A', poundForce * inch),
    ],
    shown('N·m/A'),
    shown('lbf·in/A'),
  ),
  capacitance: kind('µF', [
    unit('F'),
    unit('µF', 1, { per: 1_000_000 }),
    unit('mF', 1, { per: 1000, exactCase: true }),
  ]),

  resistivity: kind('Ω·mm²/m', [unit('Ω·m'), unit('Ω·mm²/m', 1, { per: 1_000_000 })]),

  inductance: kind('µH', [
    unit('H'),
    unit('µH', 1, { per: 1_000_000 }),
    unit('mH', 1, { per: 1000, exactCase: true }),
    unit('nH', 1, { per: 1_000_000_000 }),
  ]),

  temperature: kind(
    '°C',
    [
      unit('°C', 1, { also: ['C', 'deg C', 'celsius'] }),
      unit('°F', 5, { per: 9, plus: -160, also: ['F', 'deg F', 'fahrenheit'] }),
      unit('K', 1, { plus: -273.15, also: ['kelvin'] }),
    ],
    shown('°C'),
    shown('°F'),
  ),
  temperatureDifference: kind(
    'K',
    [unit('K', 1, { also: ['°C', 'C'] }), unit('°F', 5, { per: 9, also: ['F', 'Δ°F'] })],
    shown('K'),
    shown('°F'),
  ),
  heatCapacity: kind('J/K', [unit('J/K', 1, { also: ['J/°C'] }), unit('kJ/K', 1000)]),
  thermalResistance: kind('K/W', [unit('K/W', 1, { also: ['°C/W', 'C/W'] })]),
  thermalConductance: kind('W/K', [unit('W/K', 1, { also: ['W/°C', 'W/C'] })]),
  temperatureCoefficient: kind('1/K', [
    unit('1/K'),
    unit('%/K', 1, { per: 100 }),
    unit('ppm/K', 1, { per: 1_000_000 }),
  ]),
  specificHeat: kind('J/(kg·K)', [
    unit('J/(kg·K)', 1, { also: ['J/kg/K', 'J/kgK'] }),
    unit('kJ/(kg·K)', 1000),
  ]),
  flow: kind(
    'L/min',
    [
      unit('m³/s'),
      unit('L/min', 1, { per: 60_000, also: ['lpm'] }),
      unit('L/h', 1, { per: 3_600_000 }),
      unit('gal/min', exact.cubicMetresPerGallon, { per: 60, also: ['gpm'] }),
    ],
    shown('L/min'),
    shown('gal/min'),
  ),
}

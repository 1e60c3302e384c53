import type { LogOverTime } from '../../shared-engine/draw/plots/log-over-time.ts'
import type { SpeedState } from '../../shared-engine/draw/plots/speed-states.ts'

/** Curves for drawings: demo data of plausible shape, not a model; the engine's own numbers are tested elsewhere. */
const topBelt = 14

function stateAt(beltSpeed: number): SpeedState {
  const share = beltSpeed / topBelt
  const motorThrust = Math.min(640, 1150 * (1 - share))
  const gripThrust = 420
  const thrust = Math.min(motorThrust, gripThrust)
  const spinning = motorThrust > gripThrust
  const groundSpeed = beltSpeed * (spinning ? 0.94 : 0.96)
  const motorAmps = 140 * Math.min(1, 1.75 * (1 - share)) + 2
  const shaftPower = motorThrust * beltSpeed
  const packPower = shaftPower + 0.02 * motorAmps ** 2 + 6 * beltSpeed + 4
  return {
    groundSpeed,
    beltSpeed,
    motorThrust,
    thrust,
    gripThrust,
    resistance: 34 + 0.42 * groundSpeed ** 2,
    motorAmps,
    packAmps: packPower / 44,
    shaftPower,
    packPower,
    motorEfficiency: beltSpeed === 0 ? null : shaftPower / packPower,
    overallEfficiency: beltSpeed === 0 ? null : (thrust * groundSpeed) / packPower,
  }
}

const count = 121
export const speedStates = Array.from({ length: count }, (_, index) =>
  stateAt((1.02 * topBelt * index) / (count - 1)),
)

export const topState = { groundSpeed: 12.1, thrust: 95.5 }

const seconds = Array.from({ length: 61 }, (_, index) => index * 0.12)
export const run = {
  seconds,
  speed: seconds.map((t) => 12 * (1 - Math.exp(-t / 1.8))),
  distance: seconds.map((t) => 12 * (t - 1.8 * (1 - Math.exp(-t / 1.8)))),
}

export const throttle = Array.from({ length: 51 }, (_, index) => index / 50)
export const toothCases = [
  { label: 'Jam at full throttle', values: throttle.map((d) => 21.5e6 * d), passedAt: 15.6 / 21.5 },
  {
    label: 'What the ground lets through',
    values: throttle.map((d) => Math.min(9.2e6, 21.5e6 * d)),
    passedAt: null,
  },
  { label: 'Top speed', values: throttle.map((d) => (d < 0.18 ? null : 2.6e6 * d ** 1.6)), passedAt: null },
]
export const shear = {
  label: 'Tooth shear',
  kind: 'stress',
  allowed: 15.6e6,
  limit: 'track.tooth-shear',
} as const

export const beltSpeed = speedStates.map((state) => state.beltSpeed)
export const groundSpeed = speedStates.map((state) => state.groundSpeed)
export const overSpeed = [
  { label: 'Motor alone', values: speedStates.map((state) => state.motorThrust * 29e3) },
  { label: 'What the ground lets through', values: speedStates.map((state) => state.thrust * 29e3) },
]

const centrifugal = beltSpeed.map((v) => 0.9 * v ** 2)
export const tension = {
  beltSpeed,
  groundSpeed,
  pretension: 60,
  // A fixed tensioner: the pull takes some of it, the loop's own mass replaces it.
  slack: beltSpeed.map((speed) => 45 + 0.4 * speed * speed),
  liftOffSpeed: null,
  centrifugal,
  total: speedStates.map((state, index) => 1.5 * state.motorThrust + 60 + (centrifugal[index] ?? 0)),
  breaking: 2600,
  burstSpeed: 53,
  freeBeltSpeed: 14.6,
}

export const limitRows = [
  { id: 'motor.free-rpm', label: 'Unloaded motor speed', margin: -0.14, standing: 'over' },
  { id: 'track.tooth-shear', label: 'Tooth shear', margin: 0.05, standing: 'near' },
  { id: 'pack.current-burst', label: 'Pack burst current', margin: 0.17, standing: 'near' },
  { id: 'stage.1.bending', label: 'Reduction 1 tooth bending', margin: 0.44, standing: 'within' },
  { id: 'motor.temperature', label: 'Motor temperature', margin: null, standing: 'over' },
] as const

const minutes = Array.from({ length: 81 }, (_, index) => index * 15)
const warming = (to: number, tau: number) => minutes.map((t) => 15 + (to - 15) * (1 - Math.exp(-t / tau)))
export const warmUpData = {
  curves: [
    {
      label: 'Winding, air',
      seconds: minutes,
      temperatures: warming(168, 420),
      secondsToLimit: 420 * Math.log(153 / 48),
    },
    { label: 'Winding, cooled', seconds: minutes, temperatures: warming(92, 300), secondsToLimit: null },
    { label: 'Controller', seconds: minutes, temperatures: warming(61, 160), secondsToLimit: null },
  ],
  limits: [{ id: 'motor.temperature' as const, label: 'Winding limit', value: 120 }],
  motorAmps: 46,
}

const cruising = Array.from({ length: 81 }, (_, index) => 0.15 + index * 0.15)
const amps = cruising.map((v) => (v > 11.4 ? null : 1.2 + (v * (34 + 0.42 * v ** 2)) / 34))
const lasting = amps.map((one) => (one === null ? null : (5 * 0.8 * 3600) / one))
const metres = lasting.map((one, index) => (one === null ? null : one * (cruising[index] ?? 0)))
const furthest = metres.reduce<number>(
  (best, one, index) => ((one ?? 0) > (metres[best] ?? 0) ? index : best),
  0,
)
export const cruise = {
  speed: cruising,
  packAmps: amps,
  seconds: lasting,
  metres,
  best: { speed: cruising[furthest] ?? 0, metres: metres[furthest] ?? 0 },
}

const moments = Array.from({ length: 181 }, (_, index) => index)
const cycle = (t: number) => (t % 60 < 40 ? 1 : 0.1)
export const pattern = {
  name: 'drive-pattern',
  title: 'Drive pattern: three pulls',
  summary: 'Three pulls of 40 s: the winding passes its limit after 157 s.',
  seconds: moments,
  panels: [
    {
      label: 'Pack',
      kind: 'volts',
      series: [{ label: 'Voltage', values: moments.map((t) => 49 - t / 60 - 4 * cycle(t)) }],
    },
    {
      label: 'Current',
      kind: 'amps',
      series: [{ label: 'One motor', values: moments.map((t) => (t > 70 && t < 76 ? null : 90 * cycle(t))) }],
    },
    {
      label: 'Temperature',
      kind: 'temperature',
      fromZero: false,
      series: [
        { label: 'Winding', values: moments.map((t) => 20 + 0.7 * t + 8 * Math.sin(t / 10)) },
        { label: 'Coolant', values: moments.map((t) => 20 + 0.12 * t) },
      ],
      limits: [{ id: 'motor.temperature', label: 'Winding', value: 130, beyond: 'above', passedAt: 157 }],
    },
  ],
} as const

const tries = Array.from({ length: 240 }, (_, index) => ({ a: (index * 37) % 240, b: (index * 89) % 240 }))
const speeds = tries.map(({ a }) => 6 + a / 30)
const loads = tries.map(({ a, b }) => 40 + a * 0.9 + b * 0.8)
export const candidates = {
  x: { label: 'Top speed', kind: 'speed' },
  y: { label: 'Tooth load', kind: 'force' },
  xs: speeds,
  ys: loads,
  holds: loads.map((load) => load <= 260),
  front: tries
    .map((_, index) => index)
    .filter(
      (one) =>
        !tries.some(
          (_, other) => (speeds[other] ?? 0) > (speeds[one] ?? 0) && (loads[other] ?? 0) < (loads[one] ?? 0),
        ),
    )
    .sort((one, other) => (speeds[one] ?? 0) - (speeds[other] ?? 0)),
  chosen: 44,
  tried: 20000,
} as const

export const bands = [
  {
    id: 'track.tooth-shear' as const,
    label: 'Tooth shear',
    low: -0.22,
    middle: 0.04,
    high: 0.24,
    probabilityOver: 0.37,
  },
  {
    id: 'motor.free-rpm' as const,
    label: 'Free-running rpm',
    low: -0.19,
    middle: -0.12,
    high: -0.05,
    probabilityOver: 0.98,
  },
  {
    id: 'pack.floor-voltage' as const,
    label: 'Pack volts under load',
    low: 0.11,
    middle: 0.17,
    high: 0.22,
    probabilityOver: 0,
  },
]

const teeth = Array.from({ length: 13 }, (_, index) => 10 + index)
export const sweep = {
  x: { label: 'Sprocket teeth', kind: 'count' },
  xs: teeth,
  today: 14,
  figures: [
    {
      name: 'topSpeedMps',
      label: 'Top speed',
      kind: 'speed',
      ys: teeth.map((z) => 0.9 * z - 0.012 * z ** 2),
      today: 0.9 * 14 - 0.012 * 14 ** 2,
      crossings: [{ at: 17.5, label: '1', means: 'grip', limit: 'vehicle.start' }],
    },
  ],
} as const

export const compared = {
  name: 'overlay-thrust',
  title: 'Thrust of both builds',
  x: { label: 'Ground speed', kind: 'speed' },
  y: { label: 'Thrust', kind: 'force' },
  builds: [
    { name: 'Sled hare', xs: groundSpeed, ys: speedStates.map((state) => state.thrust) },
    { name: 'Sled hare, 12 teeth', xs: groundSpeed, ys: speedStates.map((state) => state.thrust * 0.84) },
    {
      name: 'Wood hauler',
      xs: groundSpeed.map((v) => v / 3),
      ys: speedStates.map((state) => state.thrust * 1.3),
    },
  ],
} as const

const rows = Array.from({ length: 400 }, (_, index) => index / 5)
const here = (t: number) => t < 30 || t > 36
const current = (aside: number) => rows.map((t) => (here(t) ? 40 + aside + 20 * Math.cos(t / 9) : null))
export const log: LogOverTime = {
  title: 'Channels over time',
  summary: 'A run of 80 s: the signal is gone for 6 s, then the motor passes its limit.',
  span: null,
  panels: [
    {
      label: 'Motor rpm',
      kind: 'rpm',
      fromZero: true,
      limits: [{ label: 'Limit', value: 9000, beyond: 'above' }],
      curves: [
        {
          label: 'Motor',
          seconds: rows,
          values: rows.map((t) => (here(t) ? 5000 + 4600 * Math.sin(t / 25) ** 2 : null)),
          band: null,
        },
      ],
    },
    {
      label: 'Current',
      kind: 'amps',
      fromZero: true,
      limits: [],
      curves: [
        {
          label: 'Pack, from the sag',
          seconds: rows,
          values: current(0),
          band: { seconds: rows, low: current(-6), high: current(6) },
        },
      ],
    },
  ],
  episodes: [
    { label: 'No signal', start: 30, end: 36, over: false },
    { label: 'Over-rev', start: 37, end: 42, over: true },
    { label: 'Load lost', start: 70, end: 70.2, over: true },
  ],
}

import { readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { readBuild } from '../shared-engine/entries/read.ts'
import { randomStream } from '../shared-engine/numeric/random.ts'
import { simulatedRun, type Sample, type Stretch } from '../test/engine/log/simulated-run.ts'

/** The machine that the log is of, and where it goes. */
export const demoMachine = 'quick-sled-puller'
const folder = 'examples'
const file = path.join(folder, `${demoMachine}.log.csv`)

/** The drive: off from the hut, a hump, ice by the spring, up to speed, and the track goes. */
const drive: readonly Stretch[] = [
  { seconds: 5, throttle: 0 },
  { seconds: 8, throttle: 0.55 },
  { seconds: 0.6, throttle: 0.55, grip: 0 },
  { seconds: 9, throttle: 0.6 },
  { seconds: 3, throttle: 0 },
  { seconds: 7, throttle: 0.7 },
  { seconds: 2, throttle: 0.7, grip: 0.3 },
  { seconds: 16, throttle: 0.75 },
  { seconds: 6, throttle: 0 },
]
/** s at which the track goes. */
export const demoLostAt = 44
/** °C of the motor as it leaves the hut. */
const startC = 4
const samplesPerSecond = 5
const seed = 20_261_128

/** Stretches without a word from the sensors, s. */
const silences: readonly (readonly [from: number, to: number])[] = [[16.5, 19.5]]

/**
 * The demo log: five samples a second of motor temperature, rpm and pack volts, with noise, readings in steps, a gap, and
 * the loss of the track, from a run of the demo machine by the engine's own drive. Invented; the same bytes at each run.
 */
export function demoLog(): string {
  const read = readBuild(readFileSync(path.join(folder, `${demoMachine}.build.json`)))
  if (!read.ok) throw new Error(`${demoMachine} cannot be read`)
  const { samples } = simulatedRun(read.value, drive, samplesPerSecond, demoLostAt, startC)
  const random = randomStream(seed)
  const noise = () => random() + random() + random() + random() - 2
  const line = ({ t, rpm, volts, motorC }: Sample) => {
    const warm = motorC + 0.1 * noise()
    const turning = Math.max(0, Math.round((rpm * (1 + 0.003 * noise())) / 10) * 10)
    return [
      (t + 0.004 * noise()).toFixed(3).replace('-', ''),
      Math.round(warm),
      turning,
      (volts + 0.02 * noise()).toFixed(1),
    ].join(';')
  }
  const heard = samples.filter(({ t }) => !silences.some(([from, to]) => t > from && t < to))
  return [
    '# Demo log, invented',
    'Time [s];Motor temp [°C];Motor rpm;Pack volts [V]',
    ...heard.map(line),
    '',
  ].join('\n')
}

/** `node scripts/run.js demo-log`: writes the demo log into `examples/`. */
export async function run(): Promise<number> {
  writeFileSync(file, demoLog())
  console.log(`Wrote ${file}.`)
  return 0
}

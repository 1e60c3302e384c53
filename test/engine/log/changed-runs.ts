import { randomStream, type Random } from '../../../shared-engine/numeric/random.ts'
import { openCircuitVolts } from '../../../shared-engine/reference/chemistry.ts'
import { demoBuild } from './reading.ts'

// Pairs of invented runs whose difference is known: what changed was put in, and all else (hills, driver, noise, warming,
// charge) is drawn anew for each run.

/** What one run of a pair has. */
export interface Put {
  /** A more at the pack at every speed. */
  readonly moreAmps: number
  /** Ω more in the pack. */
  readonly moreOhm: number
  readonly seconds: number
  /** rpm from … to of the speeds that are held. */
  readonly rpm: readonly [number, number]
  /** °C at the start. */
  readonly warm: number
}

export const usualPut: Put = { moreAmps: 0, moreOhm: 0, seconds: 400, rpm: [900, 2600], warm: 30 }

const rate = 4
const gauss = (random: Random) => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())

/** A run as a recorder writes it: held speeds, hills that go on for some 8 s, sensors with noise and steps. */
export function changedRun(put: Put, seed: number, stream: number): string {
  const random = randomStream(seed, stream)
  const cells = demoBuild.pack.series
  const alike = Math.exp(-1 / rate / 8)
  const lines = ['Time [s],Motor rpm,Pack volts [V],Pack current [A],Motor temp [°C]']
  let [hill, rpm, wanted, until, drawn, warm] = [0, 0, 0, 3, 0.1 * 3.6 * demoBuild.pack.capacityMah, put.warm]
  for (let step = 0; step < put.seconds * rate; step += 1) {
    const t = step / rate
    if (t >= until) {
      wanted = put.rpm[0] + (put.rpm[1] - put.rpm[0]) * random()
      until = t + 8 + 14 * random()
    }
    rpm += (wanted - rpm) * 0.3
    hill = alike * hill + Math.sqrt(1 - alike * alike) * 1.5 * gauss(random)
    const turning = rpm > 50
    const amps = turning
      ? 4 + 0.004 * rpm + 1.2e-6 * rpm * rpm - 0.01 * (warm - 30) + hill + put.moreAmps
      : 0.5
    drawn += amps / rate
    warm += (0.02 * amps) / rate / 4 - ((warm - 20) * 0.0006) / rate
    const full = 1 - drawn / (3.6 * demoBuild.pack.capacityMah)
    const volts = cells * openCircuitVolts(demoBuild.pack.chemistry, full) - amps * (0.04 + put.moreOhm)
    lines.push(
      [
        t.toFixed(2),
        (Math.round((rpm * (1 + 0.004 * gauss(random))) / 10) * 10).toFixed(0),
        (volts + 0.03 * gauss(random)).toFixed(1),
        (amps + 0.2 * gauss(random)).toFixed(1),
        Math.round(warm + 0.3 * gauss(random)).toFixed(0),
      ].join(','),
    )
  }
  return `${lines.join('\n')}\n`
}

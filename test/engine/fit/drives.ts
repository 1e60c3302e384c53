import { buildSetter } from '../../../shared-engine/uncertainty/build.ts'
import { openCircuitVolts } from '../../../shared-engine/reference/chemistry.ts'
import type { Build } from '../../../shared-engine/entries/schema.ts'
import { readBuildText } from '../../../shared-engine/entries/read.ts'
import type { FitLog } from '../../../shared-engine/fit/log.ts'
import { readFileSync } from 'node:fs'

// Invented drives with known truths: the machine of the first fit example, run by formulas of their own (not the engine's),
// logged by sensors with noise, steps and a held channel.

export const machine = (): Build => {
  const read = readBuildText(
    readFileSync(new URL('../../golden/measure/fit-1.build.json', import.meta.url), 'utf8'),
  )
  if (!read.ok) throw new Error('the example cannot be read')
  return { ...read.value, tolerances: {} }
}

/** Numbers from 0 to 1 by a seed: a multiplicative congruential generator. *Source:* Park and Miller, 1988. */
export function randomOf(seed: number): () => number {
  let state = (seed * 16807 + 12345) % 2147483647
  for (let warm = 0; warm < 20; warm += 1) state = (state * 16807) % 2147483647
  return () => (state = (state * 16807) % 2147483647) / 2147483647
}

const normalOf = (random: () => number) =>
  Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random())

export interface Drive {
  /** Duty by time. */
  readonly duty: (seconds: number) => number
  readonly seconds: number
  readonly truth: Readonly<Record<string, number>>
  readonly random: () => number
  /** s by which the currents come late, as filtered sensors' do; 0 where left out. */
  readonly late?: number
}

/** One log of a drive: Euler steps of 5 ms, ten rows a second. */
export function logOf(build: Build, { duty, seconds, truth, random, late = 0 }: Drive): FitLog {
  const paths = Object.keys(truth)
  const true_ = buildSetter(build, paths)(Float64Array.from(Object.values(truth)))
  const { motor, controller, pack, track, vehicle, ground, service } = true_
  if (ground.model !== 'coefficient') throw new Error('the drives are on a coefficient')
  const constant =
    (60 / (2 * Math.PI * motor.kvRpmPerVolt)) * (1 - 0.0011 * (service.windingTemperatureC - 20))
  const winding = (motor.resistanceMilliohm / 1000) * (1 + 0.00393 * (service.windingTemperatureC - 20))
  const cells =
    (pack.series * pack.cellResistanceMilliohm * 2 ** ((25 - service.packTemperatureC) / 20)) / pack.parallel
  const packOhm = (cells + pack.wiringResistanceMilliohm) / 1000
  const radius = (track.sprocketTeeth * track.pitchMm) / 1000 / (2 * Math.PI)
  const [ratio, efficiency] = [5.2, 0.94]
  const loops = track.count * (track.massGPerM / 1000) * track.loopPitches * (track.pitchMm / 1000)
  const mass = vehicle.massKg + loops + (motor.rotorInertiaGcm2 * 1e-7 * ratio ** 2) / radius ** 2
  const reference =
    (motor.noLoadVolts - (motor.noLoadAmps * motor.resistanceMilliohm) / 1000) /
    (60 / (2 * Math.PI * motor.kvRpmPerVolt))
  const rho = 101325 / (287.05287 * (273.15 + ground.airTemperatureC))
  const grip = 1 - ground.slipPercent / 100
  const columns: Record<string, number[]> = {
    seconds: [],
    motorRpm: [],
    packVolts: [],
    packAmps: [],
    motorAmps: [],
    duty: [],
    groundMps: [],
  }
  const noise = (sigma: number, step: number, value: number) =>
    Math.round((value + sigma * normalOf(random)) / step) * step
  let [belt, drawn, held] = [0, 0, 0]
  const dt = 0.005
  /** Currents of pack and motor of the last steps: what a late sensor shows. */
  const past: (readonly [number, number])[] = []
  for (let step = 0; step * dt < seconds; step += 1) {
    const d = duty(step * dt)
    const open =
      pack.series *
      openCircuitVolts(pack.chemistry, service.stateOfChargePercent / 100 - drawn / (pack.capacityMah * 3.6))
    const speed = (belt * ratio) / radius
    const series = winding + controller.resistanceMilliohm / 1000
    const amps = Math.min(
      (d * open - speed * constant) / (series + d * d * packOhm),
      controller.currentLimitAmps ?? Infinity,
    )
    const limited = amps === controller.currentLimitAmps
    const volts = limited
      ? (open + Math.sqrt(open * open - 4 * packOhm * amps * (speed * constant + amps * series))) / 2
      : open - d * amps * packOhm
    const used = limited ? (speed * constant + amps * series) / volts : d
    past.push([used * amps, amps])
    const [latePack, lateMotor] = past[Math.max(0, step - Math.round(late / dt))] ?? [0, 0]
    if (step % 20 === 0) {
      columns['seconds']?.push(Math.round(step * dt * 10) / 10)
      columns['motorRpm']?.push(noise(8, 1, (speed * 60) / (2 * Math.PI)))
      columns['packVolts']?.push(noise(0.03, 0.01, volts))
      columns['packAmps']?.push(noise(0.4, 0.1, latePack))
      columns['motorAmps']?.push(noise(0.6, 0.1, lateMotor))
      columns['duty']?.push(noise(0.001, 0.001, used))
      // The satellite's speed comes five times a second, and is held between.
      if (step % 40 === 0) held = noise(0.1, 0.01, belt * grip)
      columns['groundMps']?.push(held)
    }
    const noLoad =
      motor.noLoadAmps * (1 - motor.viscousPercent / 100 + ((motor.viscousPercent / 100) * speed) / reference)
    const pull =
      (constant * (amps - noLoad) * ratio * efficiency) / radius -
      track.internalDragN -
      track.internalDragNPerMps * belt
    const v = belt * grip
    const held_ =
      belt > 0
        ? ground.rollingCoefficient * vehicle.massKg * 9.80665 +
          0.5 * rho * vehicle.dragCoefficient * vehicle.frontalAreaM2 * v * v
        : 0
    belt = Math.max(0, belt + (dt * (pull - held_)) / (mass * grip))
    drawn += dt * used * amps
  }
  const { seconds: times = [], ...channels } = columns
  return { noise: {}, segments: [{ offGround: false, seconds: times, channels }] }
}

/** Bursts and coasting of changing strength, from a generator. */
export function burstsOf(random: () => number, seconds: number): (time: number) => number {
  const parts: { end: number; duty: number }[] = []
  for (let end = 0; end < seconds;) {
    end += 4 + 12 * random()
    parts.push({ end, duty: random() < 0.3 ? 0.02 : 0.25 + 0.7 * random() })
  }
  return (time) => parts.find((part) => time < part.end)?.duty ?? 0
}

import { describe, expect, it } from 'vitest'
import { machineOf } from '../../shared-engine/machine/machine.ts'
import type { Machine } from '../../shared-engine/machine/parts.ts'
import { readBuildValue } from '../../shared-engine/entries/read.ts'
import { bestPointsOf } from '../../shared-engine/motor/best-points.ts'
import { ampsAt, DriveLine, setDriveLine, torqueAt } from '../../shared-engine/motor/drive-line.ts'
import { freeSpeedAt } from '../../shared-engine/motor/free-speed.ts'
import { simpleBuild } from '../fixtures/build/plain.ts'

// A pin: the numbers are ours, worked by hand. The forms are those of M. Drela, *First-Order DC Electric Motor Model*, MIT
// Aero and Astro, public notes, 2007, from memory: eqs. 1 to 3 (i − i_0 = Q K_Q, v = i R + Ω/K_v), no-load speed and the
// best-efficiency relations. The stiff pack of the notes is a cell of 0.05 mΩ, which moves results by 1e-4.

/** A motor of 1000 rpm/V, 50 mΩ, 1 A without load, on 4.2 V cells that hardly sag; no reductions. */
function machineWith(series: number): Machine {
  const plain = simpleBuild()
  const read = readBuildValue({
    ...plain,
    pack: { chemistry: 'lipo', series, parallel: 40, capacityMah: 5000, cellResistanceMilliohm: 0.05 },
    controller: {},
    motor: {
      kvRpmPerVolt: 1000,
      resistanceMilliohm: 50,
      noLoadAmps: 1,
      noLoadVolts: 10,
      viscousPercent: 0,
      poleCount: 14,
      ratedMaxRpm: 50_000,
      magnet: 'ignore',
    },
    stages: [],
    service: { windingTemperatureC: 20 },
    tolerances: {},
    origins: {},
  })
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  return machineOf(read.value)
}

const volts = 12.6
const resistance = 0.05
const noLoad = 1
/** 60/(2π · 1000) N·m/A. */
const torqueConstant = 0.009549296585513721

function lineOf(machine: Machine): DriveLine {
  const line = new DriveLine()
  setDriveLine(line, machine, volts, 20, 1)
  return line
}

describe('first-order motor model', () => {
  const machine = machineWith(3)
  const line = lineOf(machine)

  it('has the torque constant 60/(2π Kv): eq. 3, K_Q = K_v', () => {
    // 1e-12: closed form
    expect(Math.abs(line.torqueConstant / torqueConstant - 1)).toBeLessThan(1e-12)
  })

  it('draws (V − Ω/Kv)/R at half of its speed: 126 A', () => {
    const speed = (volts / torqueConstant) * 0.5
    // 1e-3: the pack's 4 µΩ beside 50 mΩ
    expect(Math.abs(ampsAt(line, speed) / (volts / 2 / resistance) - 1)).toBeLessThan(1e-3)
  })

  it('turns freely at Kv (V − I_0 R): 12,550 rpm', () => {
    const rpm = (freeSpeedAt(machine, volts, 20, 1) * 60) / (2 * Math.PI)
    // 1e-6: the pack's 4 µΩ times 1 A
    expect(Math.abs(rpm / 12_550 - 1)).toBeLessThan(1e-6)
  })

  it('has no torque at its free speed, and K (I − I_0) elsewhere', () => {
    const free = freeSpeedAt(machine, volts, 20, 1)
    expect(Math.abs(torqueAt(line, free))).toBeLessThan(1e-12)
    expect(torqueAt(line, free / 2)).toBeCloseTo(torqueConstant * (ampsAt(line, free / 2) - noLoad), 12)
  })

  it('is most efficient at I = √(I_0 V/R), with η = (1 − √(I_0 R/V))²', () => {
    const best = bestPointsOf(line)
    const amps = Math.sqrt((noLoad * volts) / resistance)
    const efficiency = (1 - Math.sqrt((noLoad * resistance) / volts)) ** 2
    // 1e-4: the pack is not quite stiff; the flat top of the curve leaves its place to 1e-4
    expect(Math.abs((best?.efficiency.amps ?? NaN) / amps - 1)).toBeLessThan(2e-4)
    expect(Math.abs((best?.efficiency.efficiency ?? NaN) / efficiency - 1)).toBeLessThan(1e-4)
  })

  it('gives most power at half the stall current plus half of I_0', () => {
    const best = bestPointsOf(line)
    const stall = volts / line.loopResistance
    // 1e-6: closed form on a loop of the pack and motor; the search for the peak stops at 1e-8 of its range
    expect(Math.abs((best?.power.amps ?? NaN) / (stall / 2 + noLoad / 2) - 1)).toBeLessThan(1e-6)
  })
})

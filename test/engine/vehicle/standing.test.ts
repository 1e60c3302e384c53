import { describe, expect, it } from 'vitest'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { fullBuild, plainBuild } from '../../fixtures/build/plain.ts'
import { evaluationOf, machineOfStored } from '../../fixtures/build/machine.ts'

const plain = plainBuild()
const gravity = 9.80665

/** A machine whose centre of mass stands 150 mm up and 200 mm ahead of the patch's rear edge. */
function machineWith(vehicle: Partial<StoredBuild['vehicle']> = {}, gradePercent = 0) {
  return machineOfStored({
    ...plain,
    pack: { ...plain.pack, series: 14 },
    stages: [{ kind: 'fixed', ratio: 8 }],
    vehicle: { massKg: 12, cgHeightMm: 150, cgAheadMm: 200, ...vehicle },
    ground: { model: 'coefficient', rollingCoefficient: 0.08, gripCoefficient: 2, gradePercent },
  })
}

describe('the front', () => {
  it('comes up at m g x/h and what holds the machine back: 12 g (4/3 + 0.08)', () => {
    // 9 digits: closed form
    expect(evaluationOf(machineWith()).frontLiftThrust).toBeCloseTo(12 * gravity * (4 / 3 + 0.08), 9)
  })

  it('comes up sooner uphill: 3 in 4, 12 g ((0.8 · 4/3 − 0.6) + 0.08 · 0.8 + 0.6)', () => {
    const { frontLiftThrust } = evaluationOf(machineWith({}, 75))
    expect(frontLiftThrust).toBeCloseTo(12 * gravity * (0.8 * (4 / 3) - 0.6 + 0.064 + 0.6), 9)
  })

  it('is held down by the slope’s own part of what holds the machine back: m g cos θ x/h + R_g at any grade', () => {
    for (const grade of [0, 20, 60, 100]) {
      const { frontLiftThrust, footing } = evaluationOf(machineWith({ towForceN: 30 }, grade))
      const expected = (footing.weight * 4) / 3 + footing.groundResistance + 30
      expect(frontLiftThrust).toBeCloseTo(expected, 9)
    }
  })

  it('stays down where grip is less than that', () => {
    const slippery = machineOfStored({
      ...plain,
      stages: [{ kind: 'fixed', ratio: 8 }],
      vehicle: { massKg: 12, cgHeightMm: 150, cgAheadMm: 200 },
      ground: { model: 'coefficient', rollingCoefficient: 0.08, gripCoefficient: 1 },
    })
    expect(evaluationOf(slippery).frontLiftDuty).toBeNaN()
  })

  it('is not known without the place of the centre of mass', () => {
    expect(evaluationOf(machineOfStored(plain)).frontLiftThrust).toBeNaN()
  })
})

describe('turning on the spot', () => {
  const full = fullBuild()
  const machine = machineOfStored(full)
  const { pivotThrust, pivotAmps, drive, line } = evaluationOf(machine)
  // 130 kg, 95 % on the tracks; rolling 0.09, skis 0.05; 900 mm long, 600 mm wide, 0.5 sideways; on the level
  const weight = 130 * gravity
  const push = (0.5 * 0.95 * weight * 0.9) / (4 * 0.6) + (0.09 * 0.95 * weight + 0.05 * 0.05 * weight) / 2

  it('pushes each side by μ W L/4B and half of what holds the machine back, slope left out', () => {
    expect(pivotThrust).toBeCloseTo(push, 9)
  })

  it('asks each of two motors for that and half of the loops’ drag', () => {
    const torque = (push + 12.5) / (machine.train.efficiency * line.motorPerBelt)
    expect(pivotAmps).toBeCloseTo(torque / drive.torqueConstant + drive.noLoadBase, 9)
  })

  it('is not known for one motor, one track, or without gauge, length or friction', () => {
    const without = (changes: Partial<StoredBuild>) =>
      evaluationOf(machineOfStored({ ...full, ...changes, tolerances: {}, origins: {} }))
    expect(without({ motor: { ...full.motor, count: 1 } }).pivotThrust).toBeNaN()
    expect(without({ track: { ...full.track, count: 1 } }).pivotThrust).toBeNaN()
    const { gaugeMm: _gauge, ...narrow } = full.vehicle
    expect(without({ vehicle: narrow }).pivotThrust).toBeNaN()
    const { turnFriction: _friction, ...smooth } = full.ground
    expect(without({ ground: smooth as StoredBuild['ground'] }).pivotAmps).toBeNaN()
  })
})

describe('starting', () => {
  it('does not happen where thrust is no more than resistance', () => {
    const { top, peakAcceleration, run } = evaluationOf(machineWith({ towForceN: 5000 }))
    expect(top.exists).toBe(false)
    expect([top.groundSpeed, peakAcceleration, run.secondsTo80]).toEqual([NaN, NaN, NaN])
  })

  it('is with all that grip and motor give, over the mass that moves', () => {
    const machine = machineWith()
    const { peakAcceleration, startThrust, footing, equivalentMass } = evaluationOf(machine)
    const push = Math.min(startThrust, footing.gripThrust) - footing.standingResistance
    expect(peakAcceleration).toBeCloseTo(push / equivalentMass, 12)
  })
})

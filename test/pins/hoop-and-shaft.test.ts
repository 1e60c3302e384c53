import { describe, expect, it } from 'vitest'
import { machineOf } from '../../shared-engine/machine/machine.ts'
import { readBuildValue } from '../../shared-engine/entries/read.ts'
import { comparativeStress } from '../../shared-engine/stages/shaft-strength.ts'
import { burstSpeedOf, centrifugalTension } from '../../shared-engine/track/tension.ts'
import { plainBuild } from '../fixtures/build/plain.ts'

// A pin: numbers of ours, worked by hand from the forms of the books named.

/** Torsion of a round shaft: what it compares to by von Mises, √3 τ, over √3. */
const shaftStress = (torque: number, diameter: number) =>
  comparativeStress(0, torque, diameter) / Math.sqrt(3)

describe('shaft in torsion', () => {
  it('τ = 16 T/(π d³): 1.5 in, 4 kip·in gives 6.04 kpsi', () => {
    // Shigley, eq. 3-37; 16 · 4/(π · 1.5³) = 6.036 kpsi, by hand.
    const torque = 4000 * 4.4482216152605 * 0.0254
    const kpsi = shaftStress(torque, 1.5 * 0.0254) / 6894.757293168 / 1000
    // 0.05 %: four figures by hand
    expect(Math.abs(kpsi / 6.036 - 1)).toBeLessThan(5e-4)
  })
})

describe('a loop that its own mass tears', () => {
  const track = {
    ...plainBuild().track,
    massGPerM: 500,
    pretensionN: 100,
    breakingTensionN: 1350,
    tensioner: 'sprung' as const,
  }
  const read = readBuildValue({ ...plainBuild(), track })
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  const part = machineOf(read.value).track

  it('pulls with m′ v², the hoop tension ρ A v² of a thin ring: 0.5 kg/m at 40 m/s, 800 N', () => {
    // thin rotating ring, σ = ρ v²: Timoshenko, Strength of Materials, part II; from memory.
    expect(centrifugalTension(part, 40)).toBeCloseTo(800, 9)
  })

  it('bursts where that and the pretension are its strength: √(1250/0.5) = 50 m/s', () => {
    expect(burstSpeedOf(part)).toBeCloseTo(50, 9)
  })
})

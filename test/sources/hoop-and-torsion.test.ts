import { describe, expect, it } from 'vitest'
import { machineOf } from '../../shared-engine/machine/machine.ts'
import { readBuildValue } from '../../shared-engine/entries/read.ts'
import { shaftStress } from '../../shared-engine/stages/shaft/physics.ts'
import { burstSpeedOf, centrifugalTension } from '../../shared-engine/track/tension.ts'
import { plainBuild } from '../fixtures/build/plain.ts'

describe('shaft in torsion', () => {
  it('τ = 16 T/(π d³): 1.5 in, 4 kip·in gives 6.04 kpsi', () => {
    // *Source:* Shigley, eq. 3-37 with the numbers of its worked shafts; 16 · 4/(π · 1.5³) = 6.036 kpsi, by hand.
    const torque = 4000 * 4.4482216152605 * 0.0254
    const kpsi = shaftStress(torque, 1.5 * 0.0254) / 6894.757293168 / 1000
    // 0.05 %: four figures by hand
    expect(Math.abs(kpsi / 6.036 - 1)).toBeLessThan(5e-4)
  })

  // *Source:* R. C. Hibbeler, *Mechanics of Materials*, 10th edition in SI units, examples 5.1 and 5.3; questions as
  // reproduced in an open teaching repository, answers from memory.
  it('a solid shaft of 100 mm radius bears 118 kN·m at 75 MPa', () => {
    // 0.3 %: three figures
    expect(Math.abs(shaftStress(118e3, 0.2) / 75e6 - 1)).toBeLessThan(3e-3)
  })

  it('5 hp at 175 rpm and 100 MPa ask for 22 mm to the whole millimetre', () => {
    // 550 ft·lbf/s a horsepower
    const torque = (5 * 745.699872) / ((175 * 2 * Math.PI) / 60)
    expect(shaftStress(torque, 0.022)).toBeLessThan(100e6)
    expect(shaftStress(torque, 0.0215)).toBeGreaterThan(100e6)
  })

  it('and 14.5 ksi for 0.858 in, in the customary edition', () => {
    const torque = 150.1 * 4.4482216152605 * 0.3048
    // 0.4 %: three figures, cubed
    expect(Math.abs(shaftStress(torque, 0.858 * 0.0254) / (14.5e3 * 6894.757293168) - 1)).toBeLessThan(4e-3)
  })
})

describe('a loop that its own mass tears', () => {
  const track = {
    ...plainBuild().track,
    massGPerM: 500,
    pretensionN: 100,
    breakingTensionN: 1350,
  }
  const read = readBuildValue({ ...plainBuild(), track })
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  const part = machineOf(read.value).track

  it('pulls with m′ v², the hoop tension ρ A v² of a thin ring: 0.5 kg/m at 40 m/s, 800 N', () => {
    // *Source:* thin rotating ring, σ = ρ v²: Timoshenko, Strength of Materials, part II; from memory.
    expect(centrifugalTension(part, 40)).toBeCloseTo(800, 9)
  })

  it('bursts where that and the pretension are its strength: √(1250/0.5) = 50 m/s', () => {
    expect(burstSpeedOf(part)).toBeCloseTo(50, 9)
  })
})

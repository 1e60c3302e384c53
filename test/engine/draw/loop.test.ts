import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chainTooth } from '../../../shared-engine/stages/chain/draw.ts'
import { chainWheelRadius } from '../../../shared-engine/stages/chain/geometry.ts'
import { linkPlaces, loopRound, placeOn } from '../../../shared-engine/draw/parts/loop.ts'
import { driveOf, gapPhase } from '../../../shared-engine/stages/loop/draw.ts'
import { trackLayout } from '../../../shared-engine/draw/parts/track-loop.ts'
import { drawnMachines } from '../../drawings/machines.ts'

const wheel = (x: number, y: number, radius: number) => ({ centre: { x, y }, radius })

describe('loop round wheels', () => {
  it('has the length of an open belt drive', () => {
    // L = 2C cos θ + π(r₁ + r₂) + 2θ(r₂ − r₁), θ = asin((r₂ − r₁)/C): open belt, e.g. Shigley's Mechanical
    // Engineering Design, eqs. 17-1 and 17-2; form from memory. 1e-12: closed form.
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 1.01, max: 9, noNaN: true }),
        (r1, r2, apart) => {
          const c = (r1 + r2) * apart
          const theta = Math.asin((r2 - r1) / c)
          const expected = 2 * c * Math.cos(theta) + Math.PI * (r1 + r2) + 2 * theta * (r2 - r1)
          const { length } = loopRound([wheel(0, 0, r1), wheel(c, 0, r2)], 1)
          expect(Math.abs(length / expected - 1)).toBeLessThan(1e-12)
        },
      ),
    )
  })

  it('is drawn as long as it is said to be', () => {
    const loop = loopRound([wheel(0, 0, 30), wheel(200, -5, 24), wheel(160, 25, 12), wheel(40, 25, 12)], 7)
    const count = 20000
    let drawn = 0
    let before = placeOn(loop, 0)
    for (let index = 1; index <= count; index++) {
      const place = placeOn(loop, (index / count) * loop.pitches * (1 - 1e-12))
      drawn += Math.hypot(place.x - before.x, place.y - before.y)
      before = place
    }
    // 1e-6: chords of 20,000 pieces fall short by less.
    expect(Math.abs(drawn / loop.length - 1)).toBeLessThan(1e-6)
    expect(loop.pitches).toBeCloseTo(loop.length / 7, 12)
  })

  it('turns once round, whatever wheels it touches', () => {
    const loop = loopRound([wheel(0, 0, 30), wheel(200, -5, 24), wheel(160, 25, 12), wheel(40, 25, 12)], 7)
    const sweep = loop.pieces.reduce((sum, piece) => sum + (piece.piece === 'arc' ? piece.sweep : 0), 0)
    expect(sweep).toBeCloseTo(2 * Math.PI, 12)
  })
})

describe('chain drive', () => {
  it('has the pitch diameter of the standard', () => {
    // ISO 606, pitch circle d = p/sin(180°/z): 08B (p = 12.7 mm), z = 17: 69.12 mm; z = 23: 93.27 mm. From memory;
    // 0.005 mm: the table gives two decimals.
    expect(Math.abs(2 * chainWheelRadius(12.7, 17) - 69.12)).toBeLessThan(0.005)
    expect(Math.abs(2 * chainWheelRadius(12.7, 23) - 93.27)).toBeLessThan(0.005)
  })

  it('seats its pins a pitch apart as chords of the pitch circle', () => {
    const radius = chainWheelRadius(12.7, 17)
    const drive = driveOf({
      driverTeeth: 17,
      drivenTeeth: 38,
      driverRadius: radius,
      drivenRadius: chainWheelRadius(12.7, 38),
      pitch: 12.7,
      centre: 300,
      polygon: true,
      even: true,
    })
    expect(drive.links % 2).toBe(0)
    expect(Math.abs(drive.loop.pitches - drive.links)).toBeLessThan(1e-9)
    const pins = Array.from({ length: 6 }, (_, index) => placeOn(drive.loop, index))
    for (const [index, pin] of pins.slice(1).entries()) {
      const before = pins[index] ?? pin
      // 1e-9: both pins lie on the driver.
      expect(Math.hypot(pin.x - before.x, pin.y - before.y)).toBeCloseTo(12.7, 9)
    }
  })

  it('has as many links as the usual formula, and a centre near the one entered', () => {
    // Links 2C/p + (z₁ + z₂)/2 + ((z₂ − z₁)/2π)² p/C: Shigley, eq. 17-34; it is approximate: half a link.
    const [z1, z2, p, c] = [13, 38, 12.7, 240]
    const drive = driveOf({
      driverTeeth: z1,
      drivenTeeth: z2,
      driverRadius: chainWheelRadius(p, z1),
      drivenRadius: chainWheelRadius(p, z2),
      pitch: p,
      centre: c,
      polygon: true,
      even: true,
    })
    const links = (2 * c) / p + (z1 + z2) / 2 + ((z2 - z1) / (2 * Math.PI)) ** 2 * (p / c)
    expect(drive.links).toBe(2 * Math.round(links / 2))
    expect(Math.abs(drive.centre - c)).toBeLessThan(p)
  })

  it('leaves the roller its seat', () => {
    const [pitch, teeth] = [12.7, 15]
    const roller = { x: chainWheelRadius(pitch, teeth) * Math.cos(Math.PI / teeth), y: 0 }
    roller.y = -chainWheelRadius(pitch, teeth) * Math.sin(Math.PI / teeth)
    const clear = chainTooth(pitch, teeth).map((point) => Math.hypot(point.x - roller.x, point.y - roller.y))
    expect(Math.min(...clear)).toBeCloseTo(0.31 * pitch, 9)
  })
})

describe('track loop', () => {
  it.each(['quick', 'hauler', 'crawler'] as const)(
    'of %s keeps its length, its pitches and its patch',
    (name) => {
      const { machine } = drawnMachines[name]
      const layout = trackLayout(machine.track, machine.vehicle.contactLength)
      if (layout === null) throw new Error('no layout')
      // 1e-9: a bracketed root.
      expect(layout.loop.length / (machine.track.loopPitches * machine.track.pitch)).toBeCloseTo(1, 9)
      expect(layout.loop.pitches).toBeCloseTo(machine.track.loopPitches, 6)
      expect(layout.patchAsEntered).toBe(true)
    },
  )

  it('puts a gap of the sprocket under every drive tooth on it', () => {
    const { machine } = drawnMachines.quick
    const layout = trackLayout(machine.track, machine.vehicle.contactLength)
    if (layout === null) throw new Error('no layout')
    const teeth = machine.track.sprocketTeeth
    const phase = gapPhase(layout.loop, 0, teeth)
    const places = linkPlaces(layout.loop, machine.track.loopPitches, 1, 1)
    const onSprocket = places.filter(
      ({ x, y }) => Math.abs(Math.hypot(x, y) / machine.track.radius - 1) < 1e-9,
    )
    expect(onSprocket.length).toBeGreaterThan(2)
    for (const { x, y } of onSprocket) {
      const turns = ((Math.atan2(y, x) - phase) * teeth) / (2 * Math.PI)
      expect(Math.abs(turns - Math.floor(turns) - 0.5)).toBeLessThan(1e-6)
    }
  })

  it('is not laid where it is shorter than its own sprocket', () => {
    const { machine } = drawnMachines.quick
    expect(trackLayout({ ...machine.track, loopPitches: machine.track.sprocketTeeth }, null)).toBeNull()
  })
})

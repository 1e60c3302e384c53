import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { completeBuild, readStoredBuild } from '../../../shared-engine/entries/read.ts'
import type { Build, StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { readPatternText } from '../../../shared-engine/drive/read.ts'
import { runDrive } from '../../../shared-engine/drive/run.ts'
import { notesBeside, starvedWords } from '../../../shared-engine/drive/starving.ts'
import { openCircuitVolts } from '../../../shared-engine/reference/chemistry.ts'

// A pack that starves on the way. When it has to is worked out by hand: a source of V_oc behind R gives at most V_oc²/(4 R).

function demo(changed: (stored: StoredBuild) => StoredBuild): Build {
  const read = readStoredBuild(readFileSync('examples/quick-sled-puller.build.json'))
  if (!read.ok) throw new Error('the demo cannot be read')
  return completeBuild(changed(read.value))
}

function driven(build: Build, rows: readonly object[]) {
  const text = JSON.stringify({ format: 'pitchline-pattern', version: 2, name: 'demo', rows })
  const pattern = readPatternText(text)
  if (!pattern.ok) throw new Error(JSON.stringify(pattern.mistakes))
  return runDrive(build, pattern.value)
}

/** 10 cells of 180 mΩ in a mass that does not warm: 1.8 Ω at 25 °C, and wires of none. */
const weak = (watts: number) =>
  demo(({ accessories: _, stepDowns: __, wires: ___, ...stored }) => ({
    ...stored,
    pack: {
      ...stored.pack,
      cellResistanceMilliohm: 180,
      wiringResistanceMilliohm: 0,
      massKg: 2000,
    },
    accessories: [{ name: 'lamps', watts }],
    service: { ...stored.service, packTemperatureC: 25, reservePercent: 1 },
  }))

describe('a pack that cannot feed the accessories any more', () => {
  // 210 W need V_oc² of 4 · 1.8 Ω · 210 W, 38.88 V: a full pack has 42 V, one that is three quarters used has less.
  const run = driven(weak(210), [{ seconds: 3600, speedKmh: 0 }])

  it('is told with the second from which on it cannot', () => {
    expect(run.starved?.of).toBe('accessories')
    const volts = 10 * openCircuitVolts('lipo', run.starved?.charge ?? NaN)
    // The drive is looked at 400 times or more: a four-hundredth of it draws 0.3 % of the charge, 0.05 V of the pack.
    expect(volts).toBeLessThanOrEqual(Math.sqrt(4 * 1.8 * 210))
    expect(volts).toBeGreaterThan(Math.sqrt(4 * 1.8 * 210) - 0.1)
    expect(run.starved?.seconds).toBeGreaterThan(60)
    expect(run.notes[0]).toMatch(
      /^From [\d.,]+\s(s|min) on the pack cannot give the power asked: it no longer feeds the accessories/,
    )
    expect(notesBeside(run)).toEqual(run.notes.slice(1))
  })

  it('is not told of one that can', () => {
    const strong = driven(weak(100), [{ seconds: 600, speedKmh: 0 }])
    expect(strong.starved).toBeNull()
    expect(strong.notes.join(' ')).not.toContain('cannot give')
  })
})

describe('a speed that the pack no longer keeps up', () => {
  const plain = demo((stored) => ({ ...stored, service: { ...stored.service, reservePercent: 1 } }))

  it('is told where the pack held it at the start, with the row and what is left of the speed', () => {
    // Its top speed is 53.1 km/h with a full pack.
    const run = driven(plain, [
      { seconds: 20, speedKmh: 10 },
      { seconds: 3000, speedKmh: 49 },
    ])
    expect(run.starved).toMatchObject({ of: 'speed', row: 1 })
    expect(run.starved?.had).toBeLessThanOrEqual(0.98 * (run.starved?.wanted ?? NaN))
    expect(run.starved?.seconds).toBeGreaterThan(60)
    expect(run.starved?.charge).toBeLessThan(0.95)
    const said = run.starved === null ? '' : starvedWords(run.starved, 'metric')
    expect(said).toMatch(/full throttle gives 48\.\d\skm\/h of the 49\.0\skm\/h of row 2/)
  })

  it('is not told of a speed that was never within reach, nor of a slope or a ground that is too much', () => {
    expect(driven(plain, [{ seconds: 600, speedKmh: 70 }]).starved).toBeNull()
    expect(driven(plain, [{ seconds: 60, speedKmh: 40 }, { seconds: 120, speedKmh: 40, gradePercent: 60 }]).starved).toBeNull() // prettier-ignore
    expect(driven(plain, [{ seconds: 60, speedKmh: 40 }, { seconds: 60, speedKmh: 40, gripPercent: 20 }]).starved).toBeNull() // prettier-ignore
  })
})

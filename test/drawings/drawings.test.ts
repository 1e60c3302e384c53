import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { seriesStyles } from '../../shared-engine/draw/role.ts'
import { sceneSvg } from '../../shared-engine/draw/svg.ts'
import { drawings } from './drawings.ts'

/**
 * Every drawing under comparison with the file that a person has looked at. A drawing that differs is written beside
 * it as `<name>-changed.svg`; if the change is meant, it takes the old file's place. A drawing without a file is
 * written and has to be looked at: the test fails that once.
 */
const folder = fileURLToPath(new URL('./output/', import.meta.url))

describe('drawings', () => {
  for (const [name, draw] of Object.entries(drawings)) {
    it(name, () => {
      const file = `${folder}${name}.svg`
      const changed = `${folder}${name}-changed.svg`
      const drawn = sceneSvg(draw())
      mkdirSync(folder, { recursive: true })
      if (!existsSync(file)) {
        writeFileSync(file, drawn)
        expect.fail(`${name}.svg was new: look at it, then run again`)
      }
      const same = readFileSync(file, 'utf8') === drawn
      if (same) rmSync(changed, { force: true })
      else writeFileSync(changed, drawn)
      expect(same, `${name}-changed.svg differs from ${name}.svg: look at both`).toBe(true)
    })
  }

  it('has no file without a drawing', () => {
    const kept = readdirSync(folder).filter((file) => file.endsWith('.svg') && !file.endsWith('-changed.svg'))
    expect(kept.map((file) => file.replace('.svg', '')).sort()).toEqual(Object.keys(drawings).sort())
  })

  it('tells the curves of one frame apart without colour: by dash and by marker', () => {
    // WCAG 2.2, 1.4.1: colour is never the only sign.
    const looks = seriesStyles.map(({ dash, marker }) => `${dash.join(' ')} ${marker}`)
    expect(new Set(seriesStyles.map(({ dash }) => dash.join(' '))).size).toBe(seriesStyles.length)
    expect(new Set(looks).size).toBe(seriesStyles.length)
    for (const draw of Object.values(drawings)) {
      for (const { series } of draw().plot?.panels ?? []) {
        expect(new Set(series.map(({ role }) => role)).size).toBe(series.length)
      }
    }
  })

  it('draws the same twice', () => {
    for (const draw of Object.values(drawings)) expect(sceneSvg(draw())).toBe(sceneSvg(draw()))
  })

  it('writes no number that is none, and no empty summary', () => {
    for (const draw of Object.values(drawings)) {
      const scene = draw()
      expect(sceneSvg(scene)).not.toMatch(/NaN|Infinity|undefined/)
      expect(scene.summary).toMatch(/[.!]$/)
    }
  })
})

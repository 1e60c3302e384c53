import { expect, it } from 'vitest'
import { sureText } from '../../src-renderer/questions/hot/sure-text.ts'
import { demoBuild, workspaceWith } from './states.ts'

/** Figures of a number as they are written; zeros that only hold places are none. */
const figuresIn = (text: string) =>
  (/[\d,.]+/.exec(text)?.[0] ?? '').replaceAll(/[,.]/g, '').replace(/^0+/, '').length

it('what a drive comes to is told as finely as the machine’s speed is known, moments and temperatures to three figures', () => {
  const { workspace } = workspaceWith([])
  const sled = demoBuild('quick-sled-puller')
  // A motor whose speed constant is known to a third.
  workspace.session.open(
    {
      ...sled,
      tolerances: { ...sled.tolerances, 'motor.kvRpmPerVolt': { plusMinusPercent: 30, shape: 'uniform' } },
    },
    true,
  )
  expect(workspace.session.known).toBe(2)
  const show = sureText(workspace)
  expect(show(3.9, 'speed')).toBe('14\u202Fkm/h')
  expect(show(1914, 'distance')).toBe('1.9\u202Fkm')
  expect(show(0.7345, 'fraction')).toBe('73\u202F%')
  expect(figuresIn(show(330.27, 'temperature'))).toBe(3)
  expect(figuresIn(show(141.37, 'time'))).toBe(3)
  expect(show(null, 'speed')).toBe('–')
  workspace.session.open({ ...sled, tolerances: {}, origins: {} }, true)
  expect(workspace.session.known).not.toBe(2)
  expect(figuresIn(sureText(workspace)(3.9, 'speed'))).toBeGreaterThan(2)
})

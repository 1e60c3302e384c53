import { describe, expect, it } from 'vitest'
import { newBuild } from '../../../shared-engine/assume/start.ts'
import { check, completeBuild, type StoredBuild } from '../../../shared-engine/index.ts'
import { formatTo } from '../../../shared-engine/units/display.ts'
import { surenessOf } from '../../../shared-engine/uncertainty/sureness.ts'
import { simpleBuild } from '../../fixtures/build/plain.ts'

const sureOf = (stored: StoredBuild) => surenessOf(check(completeBuild(stored)))
const withKv = (more: Pick<StoredBuild, 'origins' | 'tolerances'>) => sureOf({ ...simpleBuild(), ...more })
const kv = 'motor.kvRpmPerVolt'

describe('how many figures a number deserves', () => {
  // Kv times volts is as far off as Kv: what is known to ± 10 % ends in its second figure, to ± 1 % in its third
  // (ISO/IEC Guide 98-3, 7.2.6: a value ends where its uncertainty begins).
  it.each([
    [10, 2],
    [1, 3],
    [0.1, undefined],
  ] as const)('Kv to ± %d %% gives Kv times volts %s figures', (plusMinusPercent, figures) => {
    const sure = withKv({ tolerances: { [kv]: { plusMinusPercent, shape: 'uniform' } } })
    expect(sure.get('ruleOfThumbRpm')).toBe(figures)
    expect(sure.get('ratio')).toBeUndefined() // hangs on counted teeth alone
  })

  it('goes by where an entry comes from where no tolerance is entered', () => {
    expect(withKv({ origins: { [kv]: 'measured' } }).get('ruleOfThumbRpm')).toBe(3)
    expect(withKv({ origins: { [kv]: 'guessed' } }).get('ruleOfThumbRpm')).toBe(2)
    expect(withKv({}).get('ruleOfThumbRpm')).toBeUndefined()
  })

  it('is two where nothing was entered, counts among it', () => {
    const sure = sureOf(newBuild())
    for (const name of ['topSpeedMps', 'freeRpm', 'ruleOfThumbRpm', 'topMotorAmps'] as const)
      expect(sure.get(name), name).toBe(2)
  })

  it('leaves counts and what is not there as they are', () => {
    expect(formatTo(18, 'count', 'metric', 2).text).toBe('18')
    expect(formatTo(118, 'count', 'metric', 2).text).toBe('118')
    expect(formatTo(null, 'speed', 'metric', 2).text).toBe('–')
    expect(formatTo(0.1559, 'none', 'metric', undefined).text).toBe('0.1559')
  })
})

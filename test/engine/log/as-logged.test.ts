import { describe, expect, it } from 'vitest'
import { oddNumbers } from './odd-file.ts'
import { readText } from './reading.ts'

// What a person takes as it was logged, though no machine could do it, may be of any size: a fact is a number or nothing.

const columns = ['Motor rpm', 'Pack volts [V]', 'Pack current [A]', 'Motor current [A]', 'Speed [km/h]']

/** 40 s of an invented run; every seventh sample of one column, or of all of them, is out of all bounds. */
function spoilt(which: string, huge: string): string {
  const row = (at: number) => {
    const sound = [1500 + (at % 20), 48 - (at % 5) / 10, 10 + (at % 9), 20 + (at % 7), 6]
    const cells = columns.map((name, place) =>
      at % 7 === 3 && (which === 'all' || which === name) ? huge : String(sound[place]),
    )
    return [(at * 0.1).toFixed(1), ...cells].join(',')
  }
  return [['Time [s]', ...columns].join(','), ...Array.from({ length: 400 }, (_, at) => row(at))].join('\n')
}

describe('impossible samples that are taken as they were logged', () => {
  for (const huge of ['1e9', '1e200', '1e308', '-1e300'])
    it(`of ${huge} leave no fact that is no number`, () => {
      for (const which of [...columns, 'all']) {
        const result = readText(spoilt(which, huge), { asLogged: ['impossible'] })
        expect(typeof result === 'string' ? [result] : oddNumbers(result), which).toEqual([])
      }
    })
})

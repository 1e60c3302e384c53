import { describe, expect, it } from 'vitest'
import { slowest, timesOfPlaywright, timesOfVitest } from '../../scripts/slowest.ts'

// Reports as both tools write them, cut to what is read (made by hand, from a real run of each).
const vitest = {
  testResults: [
    {
      name: '/home/me/pitchline/test/laws/heat.test.ts',
      assertionResults: [
        { fullName: 'heat flows to the colder side', duration: 1500 },
        { fullName: 'left out' },
      ],
    },
  ],
}
const spec = (title: string, ...durations: number[]) => ({
  title,
  file: 'gears.spec.ts',
  tests: [{ projectName: 'window', results: durations.map((duration) => ({ duration })) }],
})
const playwright = {
  suites: [{ specs: [spec('are found', 2000)], suites: [{ specs: [spec('twice', 700, 600)] }] }],
}

describe('the slowest tests that npm test prints', () => {
  it('are those of both reports, with their files, in seconds', () => {
    expect(timesOfVitest(vitest, '/home/me/pitchline')).toEqual([
      { name: 'test/laws/heat.test.ts › heat flows to the colder side', seconds: 1.5 },
      { name: 'test/laws/heat.test.ts › left out', seconds: 0 },
    ])
    expect(timesOfPlaywright(playwright)).toEqual([
      { name: '[window] gears.spec.ts › are found', seconds: 2 },
      { name: '[window] gears.spec.ts › twice', seconds: 1.3 },
    ])
  })

  it('come longest first, ten of them', () => {
    const all = Array.from({ length: 25 }, (_, at) => ({ name: `test ${at}`, seconds: (at * 7) % 25 }))
    expect(slowest(all).map(({ seconds }) => seconds)).toEqual([24, 23, 22, 21, 20, 19, 18, 17, 16, 15])
  })

  it('are none where there is no report', () => {
    expect(timesOfVitest(null, '/home/me')).toEqual([])
    expect(timesOfPlaywright(null)).toEqual([])
  })
})

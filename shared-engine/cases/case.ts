/** Load cases of the track, in the order in which equal ones are named. */
export const trackCases = ['launch', 'grip', 'top', 'free', 'stop', 'stop-free'] as const
export type TrackCase = (typeof trackCases)[number]

/** Every state that a limit can be reached in. */
export const caseNames = [
  'launch',
  'grip',
  'top',
  'free',
  'rest',
  'run',
  'pattern',
  'build',
  'spin',
  'pivot',
  'spin-up',
  'brake',
  'stop',
  'stop-free',
] as const
export type CaseName = (typeof caseNames)[number]

/** What stands for a state where very many are written down: its place in `caseNames`. */
export const caseNumber = {
  launch: 0,
  grip: 1,
  top: 2,
  free: 3,
  rest: 4,
  run: 5,
  pattern: 6,
  build: 7,
  spin: 8,
  pivot: 9,
  'spin-up': 10,
  brake: 11,
  stop: 12,
  'stop-free': 13,
} as const satisfies Record<CaseName, number>

/** Results of two cases closer than this ratio are equal: rounding must not name the later one. */
export const apart = 1 + 1e-12

/** What each state is, in words, for workings and screens. */
export const caseWords: Readonly<Record<CaseName, string>> = {
  launch: 'a jam at full throttle: pack full and rested, motor at 20 °C, grip does not limit it',
  grip: 'a jam at full throttle as far as the ground lets it through',
  top: 'top speed: full throttle where thrust equals resistance, at the given charge and temperatures',
  free: 'airborne: the loop runs free at the fastest speed of the unloaded motor',
  rest: 'standing still at full throttle, at the given charge and temperatures',
  run: 'the worst moment of full throttle that the ground lets happen, up to top speed',
  pattern:
    'the drive pattern repeated until nothing changes from round to round, charge half way to the reserve',
  build: 'as built, at any load',
  spin: 'spinning at full throttle, at the given charge and temperatures',
  pivot: 'a pivot turn on the level, at the given charge and temperatures',
  'spin-up': 'full throttle at standstill, as the track begins to spin',
  brake: 'braking with a full pack, no accessories',
  stop: 'held at top speed: the loop stops at once, what turns runs on against its stretch',
  'stop-free': 'held while running free, at the fastest speed of the unloaded motor',
}

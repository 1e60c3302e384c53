/**
 * The Dormand-Prince pair of orders 5 and 4 with its continuous extension of order 4.
 *
 * *Source:* Hairer, Nørsett and Wanner, *Solving Ordinary Differential Equations I*, 2nd edition (1993), table II.5.2 and
 * eq. II.6.20.
 */

/** Time of each stage as a part of the step. */
export const nodes = [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1] as const

/** Weights of the earlier slopes in each stage; the last row is the step itself, of order 5. */
export const rows: readonly (readonly number[])[] = [
  [],
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
]

/** Order 5 less order 4: weights of the slopes in the error. */
export const errorWeights: readonly number[] = [
  71 / 57600,
  0,
  -71 / 16695,
  71 / 1920,
  -17253 / 339200,
  22 / 525,
  -1 / 40,
]

/** Weights of the slopes in the last term of the continuous extension. */
export const denseWeights: readonly number[] = [
  -12715105075 / 11282082432,
  0,
  87487479700 / 32700410799,
  -10690763975 / 1880347072,
  701980252875 / 199316789632,
  -1453857185 / 822651844,
  69997945 / 29380423,
]

// Limits of each kind of reduction, beside those that every kind has; one line a kind.
export { beltLimits as belt } from '../stages/belt/limits.ts'
export { chainLimits as chain } from '../stages/chain/limits.ts'
export { noStageLimits as fixed } from './stage-kind.ts'
export { gearLimits as gear } from '../stages/gear/limits.ts'

// The kinds of reduction, one line each. The one list of them: every other table of kinds has to hold the same ones,
// and does not compile where one is missing.
export { beltEntries as belt } from '../stages/belt/entries.ts'
export { chainEntries as chain } from '../stages/chain/entries.ts'
export { fixedEntries as fixed } from '../stages/fixed/entries.ts'
export { gearEntries as gear } from '../stages/gear/entries.ts'

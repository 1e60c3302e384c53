// What makes the part in SI of each kind of reduction, one line a kind.
export { beltPartOf as belt } from '../stages/belt/machine.ts'
export { chainPartOf as chain } from '../stages/chain/machine.ts'
export { fixedPartOf as fixed } from '../stages/fixed/machine.ts'
export { gearPartOf as gear } from '../stages/gear/machine.ts'

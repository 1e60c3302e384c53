// How each kind of reduction is drawn, one line a kind.
export { beltDrawing as belt } from '../../stages/belt/draw.ts'
export { chainDrawing as chain } from '../../stages/chain/draw.ts'
export { fixedDrawing as fixed } from '../../stages/fixed/draw.ts'
export { gearDrawing as gear } from '../../stages/gear/draw.ts'

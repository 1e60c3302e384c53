// The questions of the window, one line each; a new one is a folder of its own and its line here.
export { fast } from './fast/question.ts'
export { gears } from './gears/question.ts'
export { hold } from './hold/question.ts'
export { hot } from './hot/question.ts'
export { log } from './log/question.ts'
export { side } from './side/question.ts'

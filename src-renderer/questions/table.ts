import type { Question } from '../state/question.ts'
import { fast } from './fast/question.ts'
import { gears } from './gears/question.ts'
import { hold } from './hold/question.ts'
import { hot } from './hot/question.ts'
import { log } from './log/question.ts'
import { side } from './side/question.ts'

/** The questions of the window, in the order of their tabs. A new one is a folder of its own and its place here. */
export const questions: readonly Question[] = [fast, gears, hold, hot, log, side]

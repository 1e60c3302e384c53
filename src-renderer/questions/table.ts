import type { Component } from 'svelte'
import type { QuestionId } from '../state/questions.ts'
import HowFast from './fast/HowFast.svelte'
import WhichGears from './gears/WhichGears.svelte'
import HowHot from './hot/HowHot.svelte'
import SideBySide from './side/SideBySide.svelte'
import WillItHold from './hold/WillItHold.svelte'

/** What answers each question; a new question is a line here and one in state/questions.ts. */
export const answers: Readonly<Record<QuestionId, Component>> = {
  fast: HowFast,
  gears: WhichGears,
  hold: WillItHold,
  hot: HowHot,
  side: SideBySide,
}

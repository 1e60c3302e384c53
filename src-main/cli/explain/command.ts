import { jsonOption, type Command } from '../command.ts'

/** `pitchline explain`: how one number came about. */
export const explain: Command = {
  name: 'explain',
  summary: 'show how one figure or limit of a build comes about',
  arguments: [
    { name: 'build', about: 'file of the build (*.build.json), or - for standard input' },
    { name: 'subject', about: 'a figure or limit as check names it: freeRpm, track.tooth-shear; or order' },
  ],
  options: [jsonOption],
  more: `The formula, the numbers put in with where they come from, the load case, the
source, and what is an assumption. "order": what to buy or cut for each part.

Example: pitchline explain hauler.build.json track.tooth-shear`,
  run: async ([build = '', subject = ''], { json }, io) => {
    const { explainBuild } = await import('./run.ts')
    return explainBuild(build, subject, json === true, io)
  },
}

/** `npm run faults`: how many planted mistakes the tests of the engine notice. */
export { run } from '../test/faults/run.ts'

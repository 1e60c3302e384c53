import { check } from '../../shared-engine/check.ts'
import { parseExpression } from '../../shared-engine/workings/expression/parse.ts'
import { fullBuild } from '../fixtures/build/plain.ts'
import { readBuildOf } from '../fixtures/build/machine.ts'

const stored = fullBuild()
const checked = check(readBuildOf(stored))

/** Names that the examples of docstrings may use beside their own module's. */
export const exampleScope: Readonly<Record<string, unknown>> = {
  stored,
  checked,
  machine: checked.machine,
  parseExpression,
}

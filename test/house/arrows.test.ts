import { describe, expect, it } from 'vitest'
import { arrowMistakeOf } from '../../scripts/lint/arrows-rule.js'
import { orders } from '../../scripts/lint/arrows.js'

/** Importing file, what it writes, types only, and whether that is allowed. */
const cases: [from: string, specifier: string, typesOnly: boolean, allowed: boolean][] = [
  ['shared-engine/pack/voltage.ts', '../numeric/table.ts', false, true],
  ['shared-engine/pack/voltage.ts', './resistance.ts', false, true],
  ['shared-engine/numeric/table.ts', '../pack/voltage.ts', false, false],
  ['shared-engine/numeric/table.ts', '../pack/voltage.ts', true, false],
  ['shared-engine/pack/voltage.ts', '../check.ts', false, false],
  ['shared-engine/jobs/search.ts', '../check.ts', false, true],
  ['shared-engine/pack/voltage.ts', '../unheard-of/x.ts', false, false],
  ['shared-engine/pack/voltage.ts', 'zod', false, true],
  ['shared-engine/pack/voltage.ts', 'node:fs', false, false],
  ['shared-engine/pack/voltage.ts', '../../src-main/main.ts', true, false],
  ['shared-engine/stages/gear/geometry.ts', '../../machine/parts.ts', true, false],
  ['shared-engine/stages/gear/physics.ts', '../../machine/parts.ts', true, true],
  ['shared-engine/stages/gear/physics.ts', './limits.ts', false, false],
  ['shared-engine/stages/gear/limits.ts', './physics.ts', false, true],
  ['shared-engine/machine/stage.ts', '../stages/gear/geometry.ts', false, true],
  ['shared-engine/machine/stage.ts', '../stages/gear/physics.ts', false, false],
  ['shared-engine/entries/stage-kinds.ts', '../stages/gear/entries.ts', false, true],
  ['shared-engine/entries/stage-kinds.ts', '../stages/gear/machine.ts', true, false],
  ['shared-engine/stages/gear/entries.ts', './geometry.ts', false, true],
  ['shared-engine/stages/gear/entries.ts', './limits.ts', false, false],
  ['shared-engine/limits/stage.ts', '../stages/gear/limits.ts', false, true],
  ['shared-engine/limits/stage.ts', '../stages/gear/draw.ts', false, false],
  ['src-renderer/state/build.svelte.ts', '../../shared-engine/index.ts', false, true],
  ['src-renderer/host/bridge.ts', '../../src-main/bridge/contract.ts', true, true],
  ['src-renderer/host/bridge.ts', '../../src-main/bridge/contract.ts', false, false],
  ['src-renderer/host/bridge.ts', '../../src-main/bridge/receive.ts', true, false],
  ['src-renderer/host/bridge.ts', 'electron', false, false],
  ['src-renderer/host/demos.ts', '../../examples/a.build.json?raw', false, true],
  ['src-renderer/state/demos.ts', '../../examples/a.build.json?raw', false, false],
  ['src-main/cli/check/command.ts', '../../../shared-engine/index.ts', false, true],
  ['src-main/cli/check/command.ts', '../../../src-renderer/main.ts', false, false],
  ['src-main/cli/check/command.ts', '../../files/save.ts', false, true],
  ['test/cli/check.test.ts', '../../src-renderer/main.ts', false, true],
  ['src-renderer/state/view.svelte.ts', '../host/host.ts', true, true],
  ['src-renderer/state/view.svelte.ts', '../limits/bar.ts', true, false],
  ['src-renderer/state/view.svelte.ts', './remembered.ts', false, true],
  ['src-renderer/parts/Figure.svelte', '../plots/Plot.svelte', false, false],
  ['src-renderer/host/browser/unsaved.ts', '../host.ts', true, true],
  ['src-renderer/limits/Limits.svelte', '../fields/part-of-path.ts', false, true],
  ['src-renderer/fields/Fields.svelte', '../limits/bar.ts', false, false],
  ['src-renderer/questions/gears/columns.ts', '../shared/save-file.ts', false, true],
  ['src-renderer/questions/gears/columns.ts', '../side/side.svelte.ts', true, false],
  ['src-renderer/questions/gears/columns.ts', '../table.ts', false, false],
  ['src-renderer/questions/shared/save-file.ts', '../gears/columns.ts', false, false],
  ['src-renderer/questions/list.ts', './gears/question.ts', false, true],
  ['src-renderer/questions/gears/question.ts', '../../commands/table.ts', false, false],
  ['src-renderer/commands/view.ts', '../questions/table.ts', false, true],
  ['src-renderer/App.svelte', './frame/Sheets.svelte', false, true],
  ['src-renderer/unheard-of/x.ts', '../state/view.svelte.ts', false, false],
  ['src-main/bridge/receive.ts', '../files/trouble.ts', false, false],
  ['src-main/shell/handlers.ts', '../files/dialogs.ts', false, true],
  ['src-main/files/dialogs.ts', '../shell/policy.ts', false, false],
]

describe('arrows between folders', () => {
  it.each(cases)('%s importing %s (types only: %s) is allowed: %s', (from, specifier, typesOnly, allowed) => {
    expect(arrowMistakeOf(from, specifier, typesOnly) === null).toBe(allowed)
  })

  it.each(Object.entries(orders))('names no folder of %s twice', (_part, order) => {
    const names = order.flat()
    expect(new Set(names).size).toBe(names.length)
  })
})

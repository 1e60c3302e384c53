import { partForms, type Section } from '../../shared-engine/entries/sections.ts'

export type { Section } from '../../shared-engine/entries/sections.ts'

/** The fields of each part, in the order in which a builder fills them in: what is on the label first. */
export const forms: Readonly<Record<string, readonly Section[]>> = Object.fromEntries(
  partForms.map(({ part, sections }) => [part, sections]),
)

const partNames: ReadonlyMap<string, string> = new Map(partForms.map(({ part, label }) => [part, label]))

/** "Reduction 2" for `stage.2`. */
export function partName(part: string): string {
  const stage = /^stage\.(\d+)$/.exec(part)
  return stage === null ? (partNames.get(part) ?? part) : `Reduction ${stage[1] ?? ''}`
}

/** Parts from pack to ground, as the power path draws them, then what stands beside it. */
export function partsOf(stageCount: number): readonly string[] {
  const stages = Array.from({ length: stageCount }, (_, index) => `stage.${index + 1}`)
  return partForms.flatMap(({ part }) => (part === 'stage' ? stages : [part]))
}

import { materialIds, materialOf } from '../../reference/materials.ts'

/** The materials of the table, to choose from. */
export const materialChoices = materialIds.map((value) => ({ value, label: materialOf(value).label }))

/** Facts of an entry that names one of them. */
export const fromMaterials = { kind: 'text', choices: materialChoices, fromTable: true } as const

import type { Mistake } from '../../shared-engine/index.ts'
import type { Field } from '../../shared-engine/entries/fields.ts'
import type { StoredBuild } from '../../shared-engine/entries/schema.ts'
import { withoutAssumption } from '../../shared-engine/assume/assumed.ts'
import { withEntry } from '../../shared-engine/entries/edit.ts'
import { materialIds, materialOf } from '../../shared-engine/reference/materials.ts'
import { fromEngine } from '../../shared-engine/units/convert.ts'
import type { Session } from '../state/session.svelte.ts'
import { changeName } from './edits.ts'
import { withGroundModel } from './ground-edits.ts'
import { withJointKind } from './joint-edits.ts'
import { withStageKind } from './stage-edits.ts'

/** Takes a word into the build, with everything that has to change along with it, as one undoable step. */
export function chooseWord(session: Session, path: string, field: Field, word: string): readonly Mistake[] {
  const next = word === '' ? withEntry(session.stored, path, undefined) : withWord(session, path, word)
  return session.change(changeName(path, field.label), next)
}

function withWord(session: Session, path: string, word: string): StoredBuild {
  const { stored } = session
  if (path === 'ground.model') return withGroundModel(stored, word === 'soil' ? 'soil' : 'coefficient')
  if (path === 'track.tooth.material') return withToothMaterial(stored, word)
  const stage = /^stages\.(\d+)\.kind$/.exec(path)
  if (stage !== null) return withStageKind(stored, Number(stage[1]), word)
  const joint = /^(.*\bjoint)\.kind$/.exec(path)?.[1]
  if (joint !== undefined) return withJointKind(stored, joint, word)
  return withEntry(withoutAssumption(stored, path), path, word)
}

const strengths = [
  ['shearStrengthMpa', 'shear'],
  ['tensileStrengthMpa', 'tensile'],
  ['bearingStrengthMpa', 'bearing'],
] as const

/** Own strengths start from those of the material before; they go when a material of the table is chosen. */
function withToothMaterial(stored: StoredBuild, word: string): StoredBuild {
  const before = materialIds.find((id) => id === stored.track.tooth?.material)
  let next = withEntry(stored, 'track.tooth.material', word)
  for (const [key, strength] of strengths) {
    const path = `track.tooth.${key}`
    if (word !== 'custom') next = withEntry(next, path, undefined)
    else
      next = withEntry(
        next,
        path,
        before === undefined ? 1 : fromEngine(materialOf(before)[strength], 'stress', 'MPa'),
      )
  }
  return next
}

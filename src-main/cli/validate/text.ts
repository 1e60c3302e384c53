import { caution } from '../../../shared-engine/constants.ts'
import { wrapped } from '../../../shared-engine/explain/wrap.ts'
import { oneLine } from '../../../shared-engine/mistakes/shown.ts'
import type { UnitSystem } from '../../../shared-engine/units/kinds.ts'
import {
  causeSentences,
  quantitySentences,
  validationAnswer,
  validationNotes,
} from '../../../shared-engine/validate/sentences.ts'
import type { Validation } from '../../../shared-engine/validate/validate.ts'

const width = 80

/** How a build agrees with a run, as text for a person: what is off, by how much, where, and what would explain it. */
export function validationText(validation: Validation, system: UnitSystem): string {
  const parts = [
    wrapped(`${oneLine(validation.build, 160)}: ${validationAnswer(validation)}`, width),
    ...validation.quantities.map((one) =>
      quantitySentences(one, system).flatMap((sentence, at) =>
        wrapped(sentence, width, at === 0 ? '  ' : '    ', at === 0 ? '' : '  '),
      ),
    ),
    causeSentences(validation).flatMap((sentence) => wrapped(sentence, width, '  ')),
    validationNotes(validation).flatMap((sentence) => wrapped(sentence, width, '  ')),
    wrapped(caution, width),
  ]
  return `${parts
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`
}

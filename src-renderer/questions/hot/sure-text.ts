import { formatTo, oneText } from '../../../shared-engine/units/display.ts'
import type { QuantityKind } from '../../../shared-engine/units/kinds.ts'
import { sureFigures } from '../../../shared-engine/units/sure.ts'
import type { Workspace } from '../../state/workspace.svelte.ts'

/**
 * Writes what was computed as finely as the machine's speed is known, as the headline and the plots do. A moment is found
 * again in a plot or a log by it: it has three figures.
 */
export const sureText =
  ({ session, view }: Pick<Workspace, 'session' | 'view'>) =>
  (value: number | null, kind: QuantityKind): string =>
    oneText(
      formatTo(
        value,
        kind,
        view.units,
        sureFigures(kind, kind === 'time' ? session.known && 3 : session.known),
      ),
    )

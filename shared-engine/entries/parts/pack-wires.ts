import { gaugeArea, wireResistance } from '../../geometry/wire.ts'
import { fromEngine } from '../../units/convert.ts'
import type { DerivedDefault } from '../rows/row.ts'

type Reader = Parameters<DerivedDefault['of']>[0]

/** Ω of one wire with its connectors; undefined where an entry of it is unsound. */
function ohmOf(entries: Reader, wire: string): number | undefined {
  const gauge = entries.number(`${wire}.awg`)
  const area = entries.si(`${wire}.areaMm2`) ?? (gauge === undefined ? undefined : gaugeArea(gauge))
  const length = entries.si(`${wire}.lengthM`)
  const parallel = entries.number(`${wire}.parallel`)
  const connectors = entries.si(`${wire}.connectorMilliohm`)
  if (area === undefined || length === undefined || parallel === undefined || connectors === undefined)
    return undefined
  return wireResistance(area, length, parallel) + connectors
}

/** The wiring of a pack whose own resistance is not entered: its wires, one after the other; none resist nothing. */
export const packWires: DerivedDefault = {
  says: 'that of the listed wires of the pack',
  of: (entries) => {
    let sum = 0
    for (let at = 0; at < entries.length('wires'); at += 1) {
      if (entries.word(`wires.${at}.circuit`) !== 'pack') continue
      const ohm = ohmOf(entries, `wires.${at}`)
      if (ohm === undefined) return undefined
      sum += ohm
    }
    return fromEngine(sum, 'ohms', 'mΩ')
  },
}

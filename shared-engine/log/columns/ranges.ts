import type { ChannelId } from '../../reference/columns.ts'
import type { LogModel } from '../model.ts'

/** Values that a channel can have on this machine, in the channel's unit; both ends belong to it. */
interface Range {
  readonly least: number
  readonly most: number
}

const around = (most: number): Range => ({ least: -most, most })

/**
 * What each channel can show on this machine; null for channels without numbers.
 *
 * Rpm to 1.5 times the free rpm; volts from 0.45 of an empty to 1.08 of a full pack; amps to 1.2 times what a standing
 * motor without control would draw, accessories, and 5 A for the sensor's zero; speed to 1.3 times the free belt's and
 * 3 m/s; temperatures −39.9 to 200 °C, since −40 is what a broken sensor shows; charge and energy three packs' worth.
 *
 * *Source:* the machine's own numbers; the margins are common practice, no source.
 */
export function rangeOf(channel: ChannelId, model: LogModel): Range | null {
  const { machine, drive } = model
  const { pack } = machine
  switch (channel) {
    case 'rpm':
    case 'erpm':
    case 'wheelRpm':
      return around(1.5 * model.freeRpm)
    case 'volts':
      return cellRange(model, pack.series)
    case 'cellVolts':
      return cellRange(model, 1)
    case 'amps': {
      const shorted = pack.fullVolts / (pack.resistance + drive.seriesResistance / drive.count)
      return around(1.2 * shorted + model.accessoryAmps + 5)
    }
    case 'motorAmps':
      return around((1.2 * pack.fullVolts) / drive.seriesResistance + 5)
    case 'throttle':
    case 'duty':
      return around(1.05)
    case 'speed':
      return around(1.3 * model.freeBeltSpeed + 3)
    case 'motorC':
    case 'controllerC':
    case 'coolantC':
      return { least: -39.9, most: 200 }
    case 'charge':
      return { least: 0, most: 3 * pack.capacity }
    case 'energy':
      return { least: 0, most: 3 * pack.capacity * pack.fullVolts }
    case 'altitude':
      return { least: -500, most: 9_000 }
    case 'accel':
      return around(200)
    default:
      return null
  }
}

function cellRange(model: LogModel, cells: number): Range {
  return { least: cells * 0.45 * model.emptyCellVolts, most: cells * 1.08 * model.fullCellVolts }
}

/** Whether a value lies in a range. */
export function isWithin({ least, most }: Range, value: number): boolean {
  return value >= least && value <= most
}

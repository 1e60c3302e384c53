import { ampsAt, dutyAt, noLoadAmpsAt, torqueAt, type DriveLine } from './drive-line.ts'

/** A point of the curve at full throttle that stands out. */
export interface BestPoint {
  /** rad/s. */
  readonly speed: number
  /** A of one motor. */
  readonly amps: number
  /** W at the shaft of one motor. */
  readonly shaftPower: number
  /** Shaft power over shaft power, copper and iron losses; 0 to 1. */
  readonly efficiency: number
}

/** Shaft power of one motor at a speed, W. */
function shaftPowerAt(line: DriveLine, speed: number): number {
  return torqueAt(line, speed) * speed
}

function efficiencyAt(line: DriveLine, speed: number): number {
  const shaft = shaftPowerAt(line, speed)
  const amps = ampsAt(line, speed)
  const lost = amps * amps * line.motorResistance + speed * line.torqueConstant * noLoadAmpsAt(line, speed)
  return shaft / (shaft + lost)
}

/** Golden-section maximum of a function with one peak, to 1e-9 of the range: figures for a plot's marks. */
function peakOf(measure: (speed: number) => number, low: number, high: number): number {
  const golden = (Math.sqrt(5) - 1) / 2
  let left = low
  let right = high
  while (right - left > 1e-9 * (high - low)) {
    const first = right - golden * (right - left)
    const second = left + golden * (right - left)
    if (measure(first) < measure(second)) left = first
    else right = second
  }
  return (left + right) / 2
}

function pointAt(line: DriveLine, speed: number): BestPoint {
  return {
    speed,
    amps: ampsAt(line, speed),
    shaftPower: shaftPowerAt(line, speed),
    efficiency: efficiencyAt(line, speed),
  }
}

/** Speed at which the drive line's torque is nothing, rad/s. */
function freeSpeedOf(line: DriveLine): number {
  const held = line.duty * line.volts - line.noLoadBase * line.loopResistance
  return Math.max(0, held / (line.torqueConstant + line.noLoadSlope * line.loopResistance))
}

/**
 * Most shaft power and best motor efficiency on the curve of one throttle.
 *
 * @param line a filled drive line
 * @returns both points; null where the motor cannot turn itself
 * *Source:* Drela, First-Order DC Electric Motor Model; textbook forms with β = 0, R_b = 0, 20 °C:
 * I_η = √(I_nl V/R), η_max = (1 − √(I_nl R/V))², most power at half the stall current plus half of I_nl.
 */
export function bestPointsOf(line: DriveLine): { power: BestPoint; efficiency: BestPoint } | null {
  const free = freeSpeedOf(line)
  if (free === 0 || dutyAt(line, free) === 0) return null
  return {
    power: pointAt(
      line,
      peakOf((speed) => shaftPowerAt(line, speed), 0, free),
    ),
    efficiency: pointAt(
      line,
      peakOf((speed) => efficiencyAt(line, speed), 0, free),
    ),
  }
}

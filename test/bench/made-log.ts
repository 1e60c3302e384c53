/** Rows of the log that benches read. */
export const rows = 1_000_000

/**
 * An invented log of a million rows of eight columns, as bytes; the same in every run.
 *
 * Its numbers are drawn without a thought for a machine: a run with more to tell costs more behind the text, not in it.
 */
export function madeLog(): Uint8Array {
  let seed = 12_345
  const next = () => (seed = (seed * 1_103_515_245 + 12_345) & 0x7fff_ffff) / 0x7fff_ffff
  const encoder = new TextEncoder()
  const bytes = new Uint8Array(64 * rows)
  let length = 0
  let lines = [
    'Time [s],Motor rpm,Pack volts [V],Pack current [A],Duty [%],Motor temp [°C],Speed [km/h],ESC temp [°C]',
  ]
  for (let row = 0; row < rows; row += 1) {
    const rpm = Math.round(1500 + 1000 * next())
    const volts = (48 + 2 * next()).toFixed(1)
    const amps = (30 * next()).toFixed(1)
    const duty = Math.round(60 + 30 * next())
    const speed = (6 + 2 * next()).toFixed(1)
    const warm = Math.round(40 + 10 * next())
    lines.push(
      `${(row * 0.1).toFixed(3)},${rpm},${volts},${amps},${duty},${warm},${speed},${Math.round(30 + 5 * next())}`,
    )
    if (lines.length < 10_000 && row < rows - 1) continue
    // Piece by piece: the strings of a whole log would be counted as memory that reading needs.
    length += encoder.encodeInto(`${lines.join('\n')}\n`, bytes.subarray(length)).written
    lines = []
  }
  return bytes.slice(0, length)
}

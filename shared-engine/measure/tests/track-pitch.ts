import { output, type GuidedTest } from '../kind.ts'

/**
 * Pitch over many teeth, its error against the sprocket's, and mass by length.
 *
 * *Source:* length over count.
 */
export const trackPitch: GuidedTest = {
  id: 'track-pitch',
  outputs: (bench) => {
    const put = { L: bench.mean('lengthMm'), n: bench.plain('pitches') }
    const pitch = put.L / put.n
    const sprocket = { L_s: bench.mean('sprocketMm'), n_s: bench.plain('sprocketPitches') }
    const loop = { m: bench.mean('loopKg'), N: bench.entry('track.loopPitches') }
    return {
      pitch: output(pitch, 'L / n', put),
      ...(bench.has('sprocketMm')
        ? { error: output(pitch - sprocket.L_s / sprocket.n_s, 'L / n - L_s / n_s', { ...put, ...sprocket }) }
        : {}),
      ...(bench.has('loopKg')
        ? {
            perMetre: output((1e6 * loop.m) / (loop.N * pitch), '1e6 * m / (N * L / n)', { ...put, ...loop }),
          }
        : {}),
    }
  },
}

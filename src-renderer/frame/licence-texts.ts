import type { LicenceText } from './licences.ts'

/** Bundled as text: the page may fetch nothing. The names are those of licences.ts; a test holds the two together. */
const files = import.meta.glob<string>(
  [
    '../../LICENSE',
    '../../node_modules/@fontsource-variable/source-sans-3/LICENSE',
    '../../node_modules/{clsx,commander,devalue,esm-env}/{LICENSE,LICENSE.md,LICENCE.md,license}',
    '../../node_modules/{d3-array,d3-color,d3-format,d3-interpolate,d3-path,d3-scale,d3-shape,d3-time,d3-time-format,internmap}/LICENSE',
    '../../node_modules/{is-any-array,ml-array-max,ml-array-min,ml-array-rescale,ml-levenberg-marquardt,ml-matrix}/LICENSE',
    '../../node_modules/{katex,papaparse,svelte,zod}/{LICENSE,LICENSE.md}',
  ],
  { query: '?raw', import: 'default', eager: true, exhaustive: true },
)

export const texts: readonly LicenceText[] = Object.entries(files)
  .map(([file, text]) => ({ name: nameOf(file), text: text.trim() }))
  .sort((one, other) => rankOf(one) - rankOf(other) || one.name.localeCompare(other.name))

function rankOf({ name }: LicenceText): number {
  return name === 'Pitchline' ? 0 : 1
}

/** "katex" of `../../node_modules/katex/LICENSE`. */
function nameOf(file: string): string {
  return /node_modules\/(.+)\/[^/]+$/.exec(file)?.[1] ?? 'Pitchline'
}

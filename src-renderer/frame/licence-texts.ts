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
    // What writes a PDF.
    '../../node_modules/{@noble/ciphers,@noble/hashes,@swc/helpers,base64-js,clone,fast-deep-equal,fflate,linebreak}/LICENSE',
    '../../node_modules/{pako,pdfkit,png-js,restructure,source-sans,tiny-inflate,unicode-properties,unicode-trie}/{LICENSE,LICENSE.md}',
  ],
  { query: '?raw', import: 'default', eager: true, exhaustive: true },
)

const found: readonly LicenceText[] = Object.entries(files).map(([file, text]) => ({
  name: nameOf(file),
  text: text.trim(),
}))

/** Packages that name the MIT licence and come without its text: it is that of the package that brings them. */
const withoutText: readonly LicenceText[] = ['brotli', 'dfa', 'fontkit'].map((name) => {
  const whole = found.find((one) => one.name === 'pdfkit')?.text ?? ''
  const grant = whole.slice(whole.indexOf('Permission is hereby granted'))
  return { name, text: `MIT, as its package.json says; it comes without the text, which is:\n\n${grant}` }
})

export const texts: readonly LicenceText[] = [...found, ...withoutText].sort(
  (one, other) => rankOf(one) - rankOf(other) || one.name.localeCompare(other.name),
)

function rankOf({ name }: LicenceText): number {
  return name === 'Pitchline' ? 0 : 1
}

/** "katex" of `../../node_modules/katex/LICENSE`. */
function nameOf(file: string): string {
  return /node_modules\/(.+)\/[^/]+$/.exec(file)?.[1] ?? 'Pitchline'
}

/** What Pitchline is made of, with the licence of each: the packages whose code or letters are in what ships. */
export const licences: Readonly<Record<string, string>> = {
  '@fontsource-variable/source-sans-3': 'OFL-1.1',
  '@noble/ciphers': 'MIT',
  '@noble/hashes': 'MIT',
  '@swc/helpers': 'Apache-2.0',
  'base64-js': 'MIT',
  brotli: 'MIT',
  clone: 'MIT',
  clsx: 'MIT',
  commander: 'MIT',
  'd3-array': 'ISC',
  'd3-color': 'ISC',
  'd3-format': 'ISC',
  'd3-interpolate': 'ISC',
  'd3-path': 'ISC',
  'd3-scale': 'ISC',
  'd3-shape': 'ISC',
  'd3-time': 'ISC',
  'd3-time-format': 'ISC',
  devalue: 'MIT',
  dfa: 'MIT',
  'esm-env': 'MIT',
  'fast-deep-equal': 'MIT',
  fflate: 'MIT',
  fontkit: 'MIT',
  internmap: 'ISC',
  'is-any-array': 'MIT',
  katex: 'MIT',
  linebreak: 'MIT',
  'ml-array-max': 'MIT',
  'ml-array-min': 'MIT',
  'ml-array-rescale': 'MIT',
  'ml-levenberg-marquardt': 'MIT',
  'ml-matrix': 'MIT',
  pako: 'MIT',
  papaparse: 'MIT',
  pdfkit: 'MIT',
  'png-js': 'MIT',
  restructure: 'MIT',
  'source-sans': 'OFL-1.1',
  svelte: 'MIT',
  'tiny-inflate': 'MIT',
  'unicode-properties': 'MIT',
  'unicode-trie': 'MIT',
  zod: 'MIT',
}

/** A licence as it came with its package. */
export interface LicenceText {
  readonly name: string
  readonly text: string
}

/** Our own licence and those of all packages, as text; a file of its own, since hardly anybody opens it. */
export async function licenceTexts(): Promise<readonly LicenceText[]> {
  const { texts } = await import('./licence-texts.ts')
  return texts
}

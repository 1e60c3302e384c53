/** The part of papaparse that is used: its cutter, without files, workers or streams. */
interface CutterSettings {
  readonly delimiter: string
  readonly newline: string
}

interface Cutter {
  parse(text: string, baseIndex: number, ignoreLastRow: boolean): { readonly data: string[][] }
}

declare const papaparse: { readonly Parser: new (settings: CutterSettings) => Cutter }
export default papaparse

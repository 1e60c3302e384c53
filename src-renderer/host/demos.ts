import type { Demo } from './host.ts'

/** Bundled as text: the page may fetch nothing. */
const files = import.meta.glob<string>('../../examples/*.build.json', {
  query: '?raw',
  import: 'default',
  eager: true,
})

/** Our demo builds, by file name. */
export const demos: readonly Demo[] = Object.entries(files)
  .map(([file, text]) => ({ id: file.replace(/^.*\//, '').replace(/\.build\.json$/, ''), text }))
  .sort((a, b) => a.id.localeCompare(b.id))

import type { Workspace } from '../../state/workspace.svelte.ts'

/** A table, drawing or question goes where the person says; where it went, or that it could not, is told. */
export async function saveFile(
  { host, notices }: Pick<Workspace, 'host' | 'notices'>,
  kind: Parameters<Workspace['host']['exportFile']>[0],
  name: string,
  content: string | Blob,
): Promise<void> {
  const bytes =
    typeof content === 'string'
      ? new TextEncoder().encode(content)
      : new Uint8Array(await content.arrayBuffer())
  const saved = await host.exportFile(kind, name, bytes)
  if (saved?.ok === true) notices.done(`Saved ${saved.value}`)
  else if (saved !== null)
    notices.trouble('The file could not be written.', 'Nothing else was changed.', saved.mistakes)
}

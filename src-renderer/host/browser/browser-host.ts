import type { Result } from '../../../shared-engine/mistakes/mistake.ts'
import { demos } from '../demos.ts'
import type { Host, HostEvent, HostFacts, OpenedFile, ShownState, Start } from '../host.ts'
import { guarded, OpenPlaces, refused } from './open-places.ts'
import { download, pickBuild, pickPlace, writeTo } from './pickers.ts'
import { clearRecent, mayUse, recentPlaces } from './recent-places.ts'
import { Unsaved } from './unsaved.ts'

const types = {
  svg: 'image/svg+xml',
  png: 'image/png',
  csv: 'text/csv',
  html: 'text/html',
  md: 'text/markdown',
  json: 'application/json',
} as const

/** A browser tab: files come and go through its pickers, unsaved work is kept in its storage. */
export function browserHost(): Host {
  const places = new OpenPlaces()
  const unsaved = new Unsaved()
  unsaved.hold()
  const shown = guardClosing()
  return {
    facts: browserFacts(),
    demos,
    start: () => startOf(places, unsaved),
    async open() {
      const picked = await guarded('cannot-read', 'the file', pickBuild)
      if (!picked.ok) return picked
      return picked.value === null ? null : places.add(picked.value)
    },
    read: (handle) => places.read(handle),
    openDropped: (file) => places.add({ file, place: null }),
    release: (handle) => places.release(handle),
    recent: async () =>
      (await recentPlaces()).map(({ id, name }) => ({ id, name, place: '', missing: false })),
    openRecent: (id) => openRecent(places, id),
    clearRecent,
    save: (handle, { text }, fingerprint) => places.save(handle, text, fingerprint),
    saveAs: (name, { text }) => places.saveAs(name, text),
    async exportFile(kind, name, content) {
      const full = name.endsWith(`.${kind}`) ? name : `${name}.${kind}`
      const place = await guarded('cannot-write', full, () => pickPlace(full, types[kind]))
      if (!place.ok) return place
      if (place.value === null) return null
      const { value } = place
      const blob = new Blob([new Uint8Array(content)], { type: types[kind] })
      return guarded('cannot-write', full, async () => {
        if (value === 'download') download(full, blob)
        else await writeTo(value, blob)
        return value === 'download' ? full : value.name
      })
    },
    exportPdf: null,
    keep: (work) => guarded('cannot-write', 'unsaved work', async () => (await unsaved.keep(work), null)),
    forget: () => unsaved.forget(),
    discardRecovered: (id) => unsaved.discard(id),
    show: shown,
    newWindow: () => void window.open(location.href, '_blank', 'noopener'),
    // The browser asks about unsaved work itself.
    answerClose: () => undefined,
    listen: (listener) => listenOnReturn(places, listener),
  }
}

function browserFacts(): HostFacts {
  const agent = navigator.userAgent
  const platform = /Mac/.test(agent) ? 'mac' : /Windows/.test(agent) ? 'windows' : 'linux'
  const runtime = /(?:Firefox|Chrome|Version)\/[\d.]+/.exec(agent)?.[0].replace('/', ' ') ?? 'this browser'
  const [version, commit] = [__PITCHLINE_VERSION__, __PITCHLINE_COMMIT__]
  return { kind: 'browser', platform, version, commit, runtime }
}

async function startOf(places: OpenPlaces, unsaved: Unsaved): Promise<Start> {
  const initial = initialFile()
  const opened = initial === null ? null : await places.add({ file: initial, place: null })
  const recovered = (await unsaved.recovered()).map((work) => ({
    ...work,
    file: null,
    fileChangedSince: false,
  }))
  return { opened, recovered, afterCrash: false }
}

/** The build that the server was started with (src-main/serve puts it into the page). */
function initialFile(): File | null {
  const data = document.getElementById('initial-build')?.textContent
  if (!data) return null
  const { name, bytes } = JSON.parse(data) as { name: string; bytes: string }
  const decode = (base64: string) => Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0))
  return new File([decode(bytes)], new TextDecoder().decode(decode(name)), { type: types.json })
}

async function openRecent(places: OpenPlaces, id: string): Promise<Result<OpenedFile>> {
  const recent = (await recentPlaces()).find((one) => one.id === id)
  if (!recent) return refused('no-such-file', '')
  const { place, name } = recent
  const file = await guarded('cannot-read', name, async () => {
    if (!(await mayUse(place))) throw new Error('the browser was not allowed to')
    return place.getFile()
  })
  return file.ok ? places.add({ file: file.value, place }) : file
}

/** Title, and the browser's own question before unsaved work is closed. */
function guardClosing(): (state: ShownState) => void {
  let isUnsaved = false
  window.addEventListener('beforeunload', (event) => {
    if (isUnsaved) event.preventDefault()
  })
  return ({ name, unsaved }) => {
    isUnsaved = unsaved
    document.title = `${name}${unsaved ? ' (not saved)' : ''} · Pitchline`
  }
}

function listenOnReturn(places: OpenPlaces, listener: (event: HostEvent) => void): () => void {
  const look = () => void places.look((handle, gone) => listener({ kind: 'changed-outside', handle, gone }))
  window.addEventListener('focus', look)
  return () => window.removeEventListener('focus', look)
}

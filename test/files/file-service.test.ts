import {
  chmodSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { FileService } from '../../src-main/files/file-service.ts'
import { diskFileSystem as disk } from '../../src-main/files/file-system.ts'
import { OpenFiles } from '../../src-main/files/open-files.ts'
import { RecentFiles } from '../../src-main/files/recent.ts'
import { OutsideChanges } from '../../src-main/files/watch.ts'
import type { Result } from '../../shared-engine/mistakes/mistake.ts'
import { asShown } from './support/as-shown.ts'

const [first, second] = [1, 2] as const
let folder = ''
let file = ''
let shown: number[] = []
let told: string[] = []
let used: string[] = []
let service: FileService
let files: OpenFiles
let outside: OutsideChanges

beforeEach(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'pitchline-files-'))
  file = path.join(folder, 'sled.build.json')
  writeFileSync(file, 'as it was')
  shown = []
  told = []
  used = []
  files = new OpenFiles()
  outside = new OutsideChanges(disk, ({ handle }, gone) =>
    told.push(`${handle} ${gone ? 'gone' : 'changed'}`),
  )
  service = new FileService({
    disk,
    files,
    outside,
    recent: new RecentFiles(disk, path.join(folder, 'data', 'recent.json')),
    show: (owner) => shown.push(owner),
    used: (one) => used.push(one),
    saving: async () => undefined,
  })
})

afterEach(() => {
  service.releaseAll(first)
  service.releaseAll(second)
  rmSync(folder, { recursive: true, force: true })
})

function valueOf<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.mistakes))
  return result.value
}

const codeOf = (result: Result<unknown>) => (result.ok ? 'ok' : result.mistakes[0]?.code)
const open = async (owner = first as number) => valueOf(await service.open(owner, file))

describe('opening', () => {
  it('gives name, bytes and a handle, no path', async () => {
    const opened = await open()
    expect(opened.name).toBe('sled.build.json')
    expect(new TextDecoder().decode(opened.bytes)).toBe('as it was')
    expect(JSON.stringify(opened)).not.toContain(folder)
  })

  it('is told to the system, and so is a save, under a new name too', async () => {
    const { handle, fingerprint } = await open()
    expect(used).toEqual([file])
    valueOf(await service.save(first, handle, asShown('saved'), fingerprint))
    const other = path.join(folder, 'other.build.json')
    valueOf(await service.saveAs(first, other, asShown('saved')))
    expect(used).toEqual([file, file, other])
  })

  it.each([
    ['that is not there', () => path.join(folder, 'none.json'), 'no-such-file'],
    ['that is a folder', () => folder, 'is-a-folder'],
  ])('a file %s is told', async (_which, wanted, code) => {
    expect(codeOf(await service.open(first, wanted()))).toBe(code)
  })

  it('a file of another window shows that window, also through a link; once let go, it opens', async () => {
    const opened = await open(first)
    const link = path.join(folder, 'link.json')
    symlinkSync(file, link)
    expect(codeOf(await service.open(second, link))).toBe('file-open-elsewhere')
    expect(shown).toEqual([first])
    service.release(first, opened.handle)
    expect(codeOf(await service.open(second, link))).toBe('ok')
  })

  it("another window's handle is worth nothing", async () => {
    const { handle, fingerprint } = await open(first)
    expect(codeOf(await service.read(second, handle))).toBe('request-refused')
    expect(codeOf(await service.save(second, handle, asShown('stolen'), fingerprint))).toBe('request-refused')
    expect(codeOf(await service.save(second, handle, asShown('stolen'), 'overwrite'))).toBe('request-refused')
    expect(readFileSync(file, 'utf8')).toBe('as it was')
  })
})

describe('saving', () => {
  it('again and again, each with the fingerprint of the last', async () => {
    const { handle, fingerprint } = await open()
    const once = valueOf(await service.save(first, handle, asShown('once'), fingerprint))
    const twice = valueOf(await service.save(first, handle, asShown('twice'), once.fingerprint))
    expect(twice.name).toBe('sled.build.json')
    expect(readFileSync(file, 'utf8')).toBe('twice')
  })

  it('is refused after a change by another program, until that was read or the person overwrites', async () => {
    const { handle, fingerprint } = await open()
    writeFileSync(file, 'by an editor')
    expect(codeOf(await service.save(first, handle, asShown('ours'), fingerprint))).toBe(
      'file-changed-outside',
    )
    expect(readFileSync(file, 'utf8')).toBe('by an editor')
    const again = valueOf(await service.read(first, handle))
    expect(codeOf(await service.save(first, handle, asShown('ours'), fingerprint))).toBe(
      'file-changed-outside',
    )
    expect(codeOf(await service.save(first, handle, asShown('ours'), again.fingerprint))).toBe('ok')
    writeFileSync(file, 'by an editor again')
    expect(codeOf(await service.save(first, handle, asShown('ours'), 'overwrite'))).toBe('ok')
    expect(readFileSync(file, 'utf8')).toBe('ours')
  })

  it('is refused where another program put back what was there before our own save', async () => {
    const { handle, fingerprint } = await open()
    const saved = valueOf(await service.save(first, handle, asShown('ours'), fingerprint))
    writeFileSync(file, 'as it was')
    expect(codeOf(await service.save(first, handle, asShown('ours too'), saved.fingerprint))).toBe(
      'file-changed-outside',
    )
  })

  it('is refused where the file was taken away, or its disk with it', async () => {
    const { handle, fingerprint } = await open()
    renameSync(file, path.join(folder, 'moved.json'))
    expect(codeOf(await service.save(first, handle, asShown('ours'), fingerprint))).toBe('file-gone')
    rmSync(folder, { recursive: true })
    expect(codeOf(await service.save(first, handle, asShown('ours'), 'overwrite'))).toBe('no-such-file')
  })

  it('keeps permissions, refuses write-protected files, and follows links', async () => {
    chmodSync(file, 0o600)
    const link = path.join(folder, 'link.json')
    symlinkSync('sled.build.json', link)
    const { handle, fingerprint } = valueOf(await service.open(first, link))
    valueOf(await service.save(first, handle, asShown('through the link'), fingerprint))
    expect(readFileSync(file, 'utf8')).toBe('through the link')
    expect(statSync(file).mode & 0o777).toBe(0o600)
    expect(statSync(link).isFile()).toBe(true)
    chmodSync(file, 0o444)
    expect(codeOf(await service.save(first, handle, asShown('x'), 'overwrite'))).toBe('file-read-only')
  })

  it('under a name that another window works on shows that window', async () => {
    await open(first)
    expect(codeOf(await service.saveAs(second, file, asShown('x')))).toBe('file-open-elsewhere')
    expect(readFileSync(file, 'utf8')).toBe('as it was')
  })

  it('as a new file leaves no claim behind where it fails', async () => {
    const wanted = path.join(folder, 'no such folder', 'a.json')
    expect(codeOf(await service.saveAs(first, wanted, asShown('x')))).toBe('no-such-file')
    expect(files.of(first)).toEqual([])
  })
})

describe('a change by another program', () => {
  const opened = () => {
    const [one] = files.of(first)
    if (!one) throw new Error('nothing is open')
    return one
  }

  it('is told once, and again for the next one; going back to what was read is none', async () => {
    const { handle } = await open()
    await outside.look(opened())
    expect(told).toEqual([])
    writeFileSync(file, 'by an editor')
    await outside.look(opened())
    await outside.look(opened())
    expect(told).toEqual([`${handle} changed`])
    rmSync(file)
    await outside.look(opened())
    expect(told).toEqual([`${handle} changed`, `${handle} gone`])
    writeFileSync(file, 'as it was')
    await outside.look(opened())
    expect(told).toHaveLength(2)
  })

  it('is no save of our own', async () => {
    const { handle, fingerprint } = await open()
    valueOf(await service.save(first, handle, asShown('ours'), fingerprint))
    await outside.look(opened())
    expect(told).toEqual([])
  })

  it('is noticed without being looked for', async () => {
    const { handle } = await open()
    writeFileSync(file, 'by an editor')
    await expect.poll(() => told, { timeout: 10_000 }).toEqual([`${handle} changed`])
  })
})

describe('recovered work', () => {
  const work = {
    id: 'x',
    name: 'sled',
    text: '{}',
    keptAt: '2026-01-05T10:00:00.000Z',
    fingerprint: 'f',
    known: [],
    savedAs: null,
  }

  it('comes with its file as it is now, and says whether that was changed since', async () => {
    const { fingerprint } = await open()
    const same = await service.withFile(first, { ...work, file, fingerprint })
    expect(same?.file?.name).toBe('sled.build.json')
    expect(same?.fileChangedSince).toBe(false)
    writeFileSync(file, 'by an editor')
    expect((await service.withFile(first, { ...work, file, fingerprint }))?.fileChangedSince).toBe(true)
  })

  it('comes without a file where that is gone, open elsewhere or never was', async () => {
    expect((await service.withFile(first, { ...work, file: null }))?.file).toBeNull()
    expect(
      (await service.withFile(first, { ...work, file: path.join(folder, 'gone.json') }))?.file,
    ).toBeNull()
    await open(second)
    expect((await service.withFile(first, { ...work, file }))?.file).toBeNull()
    expect(shown).toEqual([])
  })
})

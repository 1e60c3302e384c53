import { contextBridge, ipcRenderer, webUtils, type IpcRendererEvent } from 'electron'
import { channels, eventChannel } from './channels.ts'
import type { Bridge, WindowEvent } from './contract.ts'

/**
 * Runs in the page's sandbox, in a world of its own: offers the verbs of the contract as `window.pitchline` and
 * nothing of Electron. Arguments are checked where they arrive (receive.ts), as nothing here can be trusted to.
 */

/** Before Electron 29 a file said itself where it lies. The getter is that of this world, out of the page's reach. */
const older = Object.getOwnPropertyDescriptor(File.prototype, 'path')?.get

/**
 * Where a dropped file lies; '' for a file made by a script and for whatever is no file, which is then refused where it
 * arrives. Both ways look at the object itself and throw for anything else: a `path` that the page puts on an object of
 * its own is never read.
 */
function pathOf(file: File): string {
  try {
    return webUtils?.getPathForFile ? webUtils.getPathForFile(file) : String(older?.call(file) ?? '')
  } catch {
    return ''
  }
}

const bridge: Bridge = {
  facts: () => ipcRenderer.invoke(channels.facts),
  start: () => ipcRenderer.invoke(channels.start),
  open: () => ipcRenderer.invoke(channels.open),
  read: (handle) => ipcRenderer.invoke(channels.read, handle),
  openDropped: (file) => ipcRenderer.invoke(channels.openDropped, pathOf(file)),
  release: (handle) => ipcRenderer.invoke(channels.release, handle),
  recent: () => ipcRenderer.invoke(channels.recent),
  openRecent: (id) => ipcRenderer.invoke(channels.openRecent, id),
  clearRecent: () => ipcRenderer.invoke(channels.clearRecent),
  save: (handle, saved, fingerprint) => ipcRenderer.invoke(channels.save, handle, saved, fingerprint),
  saveAs: (name, saved) => ipcRenderer.invoke(channels.saveAs, name, saved),
  exportFile: (kind, name, content) => ipcRenderer.invoke(channels.exportFile, kind, name, content),
  exportPdf: (paper, name) => ipcRenderer.invoke(channels.exportPdf, paper, name),
  keep: (work) => ipcRenderer.invoke(channels.keep, work),
  forget: () => ipcRenderer.invoke(channels.forget),
  discardRecovered: (id) => ipcRenderer.invoke(channels.discardRecovered, id),
  show: (state) => ipcRenderer.invoke(channels.show, state),
  newWindow: () => ipcRenderer.invoke(channels.newWindow),
  heardClose: () => ipcRenderer.invoke(channels.heardClose),
  answerClose: (close) => ipcRenderer.invoke(channels.answerClose, close),
  listen(listener) {
    const hear = (_event: IpcRendererEvent, event: WindowEvent) => listener(event)
    ipcRenderer.on(eventChannel, hear)
    return () => void ipcRenderer.off(eventChannel, hear)
  },
}

contextBridge.exposeInMainWorld('pitchline', bridge)

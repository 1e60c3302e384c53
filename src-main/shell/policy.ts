/** Sites that may be opened in the system's browser. None so far: all help is in the program. */
export const openedOutside: readonly string[] = []

/** May the window go to this address? Only to its own page: a reload, never elsewhere. */
export function mayNavigate(address: string): boolean {
  try {
    const { protocol, host, pathname, username, password } = new URL(address)
    const isPage = protocol === 'app:' && host === 'pitchline' && pathname === '/index.html'
    return isPage && username === '' && password === ''
  } catch {
    return false
  }
}

/** May this address be handed to the system's browser? Only https, only a host of the list, written plainly. */
export function mayOpenOutside(address: string, hosts: readonly string[] = openedOutside): boolean {
  try {
    const { protocol, hostname, port, username, password } = new URL(address)
    const plain = port === '' && username === '' && password === ''
    return protocol === 'https:' && plain && hosts.includes(hostname)
  } catch {
    return false
  }
}

/** What a page can ask for; all of it is denied except writing the clipboard, as *Copy* does after a click. */
export function mayHave(permission: string): boolean {
  return permission === 'clipboard-sanitized-write'
}

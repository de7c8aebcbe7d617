/** Opens an address in the browser of whoever sits here. Where there is none the address was printed, and that is enough. */
import { spawn } from 'node:child_process'
import { platform } from 'node:os'

export function openBrowser(url: string): void {
  const [command, ...args] = opener(url)
  if (command === undefined) return
  const child = spawn(command, args, { stdio: 'ignore', detached: true })
  child.once('error', () => undefined)
  child.unref()
}

function opener(url: string): readonly string[] {
  if (platform() === 'darwin') return ['open', url]
  if (platform() === 'win32') return ['cmd', '/c', 'start', '', url]
  // without a screen it would start a browser of text in the terminal the desk speaks to
  const hasScreen = Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY)
  return hasScreen ? ['xdg-open', url] : []
}

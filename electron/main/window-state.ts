import { readFileSync, writeFileSync } from 'node:fs'
import { type BrowserWindow, type Rectangle, screen } from 'electron'

interface WindowState {
  readonly bounds: Rectangle
  readonly maximized: boolean
}

/** The least size at which nothing is cut off. */
export const leastSize = { minWidth: 1024, minHeight: 640 } as const
const firstSize = { width: 1440, height: 900 } as const

/** Where the window was last, unless no display shows that place any more. */
export function readWindowState(path: string): {
  readonly bounds: Partial<Rectangle>
  readonly maximized: boolean
} {
  try {
    const state = JSON.parse(readFileSync(path, 'utf8')) as WindowState
    if (isOnADisplay(state.bounds)) return state
  } catch {
    // The first start, or a file somebody edited: the usual size then.
  }
  return { bounds: firstSize, maximized: false }
}

function isOnADisplay(bounds: Rectangle): boolean {
  if (![bounds.x, bounds.y, bounds.width, bounds.height].every(Number.isFinite)) return false
  return screen.getAllDisplays().some(({ workArea }) => {
    const across =
      Math.min(bounds.x + bounds.width, workArea.x + workArea.width) - Math.max(bounds.x, workArea.x)
    const down =
      Math.min(bounds.y + bounds.height, workArea.y + workArea.height) - Math.max(bounds.y, workArea.y)
    return across > 200 && down > 100
  })
}

export function keepWindowState(window: BrowserWindow, path: string): void {
  window.on('close', () => {
    const state: WindowState = { bounds: window.getNormalBounds(), maximized: window.isMaximized() }
    try {
      writeFileSync(path, JSON.stringify(state))
    } catch {
      // Not remembering a size is no reason to keep a window open.
    }
  })
}

import { useDeferredValue } from 'react'

/** How many of a long list are drawn: as many as a window has room for at once, the others as soon as these are painted. */
export function useDrawnCount(count: number, atOnce: number): number {
  const isPainted = useDeferredValue(true, false)
  return isPainted ? count : Math.min(count, atOnce)
}

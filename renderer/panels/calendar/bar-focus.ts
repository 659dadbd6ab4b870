import { useEffect, useRef } from 'react'
import { type BarPlace, laneKey } from './bar-walk.ts'
import type { Lane } from './lanes.ts'
import { placeOf, type TimeAxis } from './time-axis.ts'

/** Pixels of the column with the names of the lanes. */
export const nameWidth = 172

/** Scrolls just as far as it takes to see the begin of a bar beside the names and below the axis. */
export function bringIntoView(scroller: HTMLElement | null, axis: TimeAxis, { lane, bar }: BarPlace): void {
  const row = scroller?.querySelector<HTMLElement>(`[data-lane="${laneKey(lane)}"]`)
  if (!scroller || !row) return
  const [left, right] = [placeOf(axis, bar.from), placeOf(axis, bar.to)]
  const width = scroller.clientWidth - nameWidth
  const isSeen = left >= scroller.scrollLeft && Math.min(right, left + 120) <= scroller.scrollLeft + width
  if (!isSeen) scroller.scrollLeft = Math.max(0, left - width / 3)
  row.scrollIntoView({ block: 'nearest', inline: 'nearest' })
}

/** Keeps the focus on a bar that is drawn anew elsewhere, and gives it to one that is drawn a moment later. */
export function useBarFocus(stop: string | null, lanes: readonly Lane[]) {
  const hasFocus = useRef(false)
  const wanted = useRef<string | null>(null)
  useEffect(() => {
    const isLost = hasFocus.current && document.activeElement === document.body
    const id = wanted.current ?? (isLost && lanes.length > 0 ? stop : null)
    const element = id === null ? null : document.getElementById(id)
    if (element === null) return
    wanted.current = null
    element.focus({ preventScroll: true })
  })
  return {
    want: (id: string) => {
      wanted.current = id
    },
    onFocus: () => {
      hasFocus.current = true
    },
    onBlur: () => {
      hasFocus.current = false
    },
  }
}

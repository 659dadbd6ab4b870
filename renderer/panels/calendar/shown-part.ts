import {
  type RefObject,
  startTransition,
  useCallback,
  useEffect,
  useLayoutEffect,
  useRef,
  useState,
} from 'react'
import type { Span } from './lanes.ts'
import { instantAt, placeOf, type TimeAxis } from './time-axis.ts'

/** Drawn beyond both edges of what is seen, so that scrolling a little draws nothing anew; pixels. Not yet in the first drawing, to have it sooner. */
const usualMargin = 600

interface Seen {
  readonly left: number
  readonly width: number
}

interface ShownPart {
  /** What of the axis is drawn, in epoch minutes: what is seen and a margin. */
  readonly shown: Span
  /** Width in which the axis is seen, in pixels. */
  readonly width: number
  readonly onScroll: () => void
}

/** Which part of a long axis to draw: the scroller shows it behind a column of names of the given width. */
export function useShownPart(
  scroller: RefObject<HTMLElement | null>,
  axis: TimeAxis,
  nameWidth: number,
): ShownPart {
  const [seen, setSeen] = useState<Seen>({ left: 0, width: 1600 })
  const [margin, setMargin] = useState(0)
  const last = useRef(axis)

  useEffect(() => startTransition(() => setMargin(usualMargin)), [])

  // Asking for sizes makes the browser lay the page out, so it is done only when one of them can have changed.
  const look = useCallback(() => {
    const element = scroller.current
    if (element === null) return
    const now = { left: element.scrollLeft, width: element.clientWidth - nameWidth }
    setSeen((before) =>
      now.width === before.width && Math.abs(now.left - before.left) < usualMargin / 2 ? before : now,
    )
  }, [scroller, nameWidth])

  // At another scale the same moment stays at the left edge.
  useLayoutEffect(() => {
    const element = scroller.current
    const before = last.current
    last.current = axis
    if (element === null || before.width === axis.width || element.scrollLeft === 0) return
    element.scrollLeft = placeOf(axis, instantAt(before, element.scrollLeft, 1))
    look()
  }, [axis, scroller, look])

  useLayoutEffect(() => {
    const element = scroller.current
    if (element === null) return
    const watch = new ResizeObserver(look)
    watch.observe(element)
    return () => watch.disconnect()
  }, [scroller, look])

  return {
    shown: {
      from: instantAt(axis, seen.left - margin, 1),
      to: instantAt(axis, seen.left + seen.width + margin, 1),
    },
    width: seen.width,
    onScroll: look,
  }
}

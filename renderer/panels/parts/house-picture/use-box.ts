import { type RefObject, useEffect, useRef, useState } from 'react'

/** Width and height of an element in whole pixels, followed as they change. */
export function useBox<Kind extends HTMLElement>(): {
  readonly frame: RefObject<Kind | null>
  readonly width: number
  readonly height: number
} {
  const frame = useRef<Kind>(null)
  const [box, setBox] = useState({ width: 0, height: 0 })
  useEffect(() => {
    const element = frame.current
    if (element === null) return
    const watch = new ResizeObserver(() =>
      setBox({ width: element.clientWidth, height: element.clientHeight }),
    )
    watch.observe(element)
    return () => watch.disconnect()
  }, [])
  return { frame, ...box }
}

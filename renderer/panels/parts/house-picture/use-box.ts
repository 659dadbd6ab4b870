import { type RefObject, useLayoutEffect, useRef, useState } from 'react'

/** Width and height of an element in whole pixels, measured before anything is painted and followed as they change. */
export function useBox<Kind extends HTMLElement>(): {
  readonly frame: RefObject<Kind | null>
  readonly width: number
  readonly height: number
} {
  const frame = useRef<Kind>(null)
  const [box, setBox] = useState({ width: 0, height: 0 })
  useLayoutEffect(() => {
    const element = frame.current
    if (element === null) return
    const measure = () =>
      setBox((known) => {
        const { clientWidth: width, clientHeight: height } = element
        return known.width === width && known.height === height ? known : { width, height }
      })
    measure()
    const watch = new ResizeObserver(measure)
    watch.observe(element)
    return () => watch.disconnect()
  }, [])
  return { frame, ...box }
}

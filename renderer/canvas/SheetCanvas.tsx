import { useLayoutEffect, useRef } from 'react'
import type { Pen } from './drawing/pen.ts'
import type { Size } from './view.ts'

/** A drawing over the whole sheet in the screen's own pixels, made anew when it or the size changes and before the next frame is painted. */
export function SheetCanvas({ size, draw }: { readonly size: Size; readonly draw: (pen: Pen) => void }) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const { width, height } = size
  const density = window.devicePixelRatio
  // biome-ignore lint/correctness/useExhaustiveDependencies: density changes while the page is open, when it is zoomed
  useLayoutEffect(() => {
    const pen = canvas.current?.getContext('2d') ?? null
    if (pen === null || width === 0 || height === 0) return
    pen.setTransform(density, 0, 0, density, 0, 0)
    pen.clearRect(0, 0, width, height)
    draw(pen)
  }, [draw, width, height, density])
  return (
    <canvas
      ref={canvas}
      className="sheet-canvas"
      width={width * density}
      height={height * density}
      style={{ width, height }}
    />
  )
}

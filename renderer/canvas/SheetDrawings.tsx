import { useCallback, useState } from 'react'
import { Layer, Shape, Stage } from 'react-konva'
import type { Pen } from './drawing/pen.ts'
import type { Size } from './view.ts'

type Draw = (pen: Pen) => void

/** Drawings over the whole sheet in the screen's own pixels, one over the other; one is made anew when it changes. Where one fails, the station does. */
export function SheetDrawings(props: { readonly size: Size; readonly storey: Draw; readonly gesture: Draw }) {
  const [failure, setFailure] = useState<{ readonly error: unknown } | null>(null)
  const fail = useCallback((error: unknown) => setFailure({ error }), [])
  if (failure !== null) throw failure.error
  return (
    // A stage keeps the pixels it was made with.
    <Stage key={window.devicePixelRatio} {...props.size} listening={false}>
      <DrawnLayer draw={props.storey} onFailure={fail} />
      <DrawnLayer draw={props.gesture} onFailure={fail} />
    </Stage>
  )
}

/** One shape for all of it: picking asks the job, so no line has to be a thing of its own. */
function DrawnLayer(props: { readonly draw: Draw; readonly onFailure: (error: unknown) => void }) {
  const { draw, onFailure } = props
  const paint = useCallback(
    ({ _context }: { readonly _context: Pen }) => {
      try {
        draw(_context)
      } catch (error) {
        onFailure(error)
      }
    },
    [draw, onFailure],
  )
  return (
    <Layer listening={false}>
      <Shape sceneFunc={paint} listening={false} perfectDrawEnabled={false} />
    </Layer>
  )
}

import { useState } from 'react'
import { Button } from 'react-aria-components'
import { type PicturePoint, scaledByLine } from '../../../../core/sketch/underlay.ts'
import type { Length } from '../../../../core/units/length.ts'
import { jobStore } from '../../../state/app.ts'
import { Tick } from '../../parts/Tick.tsx'
import { LengthField } from '../LengthField.tsx'
import { PicturePoints } from './PicturePoints.tsx'
import { setUnderlay, type UnderlayOf } from './put-underlay.ts'

/** A line whose length is known scales the picture, and turns it square. */
export function ByWall({ storey, underlay }: UnderlayOf) {
  const { width, height } = underlay
  const [from, setFrom] = useState<PicturePoint>({ across: width * 0.25, down: height * 0.5 })
  const [to, setTo] = useState<PicturePoint>({ across: width * 0.75, down: height * 0.5 })
  const [length, setLength] = useState<Length | null>(null)
  const [isSquared, setSquared] = useState(true)
  function scale() {
    if (length === null) return
    const scaled = scaledByLine(underlay, [from, to], length, isSquared)
    if (scaled.ok) setUnderlay('Scale the picture', storey, scaled.value)
    else jobStore.refuse(scaled.problem)
  }
  return (
    <>
      <p className="quiet">
        Set the two points on the ends of a wall you know: drag them, click near one to bring it there, or
        move it with the arrow keys (Shift for larger steps). Then say how long the wall is.
      </p>
      <PicturePoints
        underlay={underlay}
        points={[from, to]}
        labels={['First point', 'Second point']}
        isClosed={false}
        onMove={([one = from, other = to]) => {
          setFrom(one)
          setTo(other)
        }}
      />
      <div className="button-row underlay-line">
        <LengthField label="Length between the points" length={length} onCommit={setLength} />
        <Tick isOn={isSquared} onChange={setSquared}>
          Turn it so that this line is level or upright
        </Tick>
        <Button className="act-button" isDisabled={length === null} onPress={scale}>
          Scale it
        </Button>
      </div>
    </>
  )
}

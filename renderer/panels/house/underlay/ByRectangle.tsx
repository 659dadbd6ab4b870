import { useState } from 'react'
import { Button } from 'react-aria-components'
import { planSide } from '../../../../core/pictures/picture-bounds.ts'
import { type RectangleCorners, squareUp } from '../../../../core/sketch/square-up.ts'
import type { Length } from '../../../../core/units/length.ts'
import { jobStore } from '../../../state/app.ts'
import { redrawPicture } from '../../../state/redraw-picture.ts'
import { LengthField } from '../LengthField.tsx'
import { PicturePoints } from './PicturePoints.tsx'
import { setUnderlay, type UnderlayOf } from './put-underlay.ts'

const labels = ['1, upper left', '2, upper right', '3, lower right', '4, lower left']

/** A rectangle whose sides are known squares up a photo taken at an angle, and scales it. */
export function ByRectangle({ storey, underlay }: UnderlayOf) {
  const [corners, setCorners] = useState<RectangleCorners>(() => firstCorners(underlay))
  const [width, setWidth] = useState<Length | null>(null)
  const [height, setHeight] = useState<Length | null>(null)
  const [isBusy, setBusy] = useState(false)
  async function redraw(sides: readonly [Length, Length]) {
    const squared = squareUp(underlay, corners, sides, planSide)
    if (!squared.ok) return jobStore.refuse(squared.problem)
    setBusy(true)
    const drawn = await redrawPicture(underlay.picture, squared.value.map, squared.value.size)
    setBusy(false)
    if (!drawn.ok) return jobStore.refuse(drawn.problem)
    setUnderlay('Square the picture up', storey, squared.value.underlay(drawn.value.hash))
  }
  return (
    <>
      <p className="quiet">
        For a photo taken at an angle: set the four points on the corners of something rectangular in it, as a
        room or the sheet of paper, round from the upper left. Then say how wide and how high that is, and the
        picture is drawn again as seen from straight above.
      </p>
      <PicturePoints
        underlay={underlay}
        points={corners}
        labels={labels}
        isClosed
        onMove={([one = corners[0], two = corners[1], three = corners[2], four = corners[3]]) =>
          setCorners([one, two, three, four])
        }
      />
      <div className="button-row underlay-line">
        <LengthField label="From 1 to 2" length={width} onCommit={setWidth} />
        <LengthField label="From 2 to 3" length={height} onCommit={setHeight} />
        <Button
          className="act-button"
          isDisabled={isBusy || width === null || height === null}
          onPress={() => width !== null && height !== null && void redraw([width, height])}
        >
          {isBusy ? 'Drawing it again …' : 'Square it up'}
        </Button>
      </div>
    </>
  )
}

function firstCorners({ width, height }: UnderlayOf['underlay']): RectangleCorners {
  const [left, right, top, bottom] = [width * 0.25, width * 0.75, height * 0.25, height * 0.75]
  return [
    { across: left, down: top },
    { across: right, down: top },
    { across: right, down: bottom },
    { across: left, down: bottom },
  ]
}

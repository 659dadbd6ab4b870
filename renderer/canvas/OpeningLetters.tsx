import { memo } from 'react'
import { Text } from 'react-konva'
import { pointBetween } from '../../core/geometry/point.ts'
import type { Job } from '../../core/project/job.ts'
import { openingLetter } from '../../core/project/opening-letters.ts'
import type { Opening } from '../../core/project/sketch-records.ts'
import { openingSides } from '../../core/project/walls.ts'
import type { DrawingColors } from './drawing-colors.ts'
import { screenDistance } from './screen-point.ts'
import { toScreen, type View } from './view.ts'

/** How far into the room a letter stands, pixels; behind the written lengths of a selected room. */
const inset = 9
const insetBehindLengths = 40
/** An opening narrower than this on the screen, in pixels, has no room for a letter. */
const narrowest = 12

/** The letters of an opening, one in each room it is seen from: the same as in lists and on paper. */
export const OpeningLetters = memo(function OpeningLetters(props: {
  readonly job: Job
  readonly opening: Opening
  readonly view: View
  readonly colors: DrawingColors
  readonly storeyId: string
  readonly selectedIds: readonly string[]
}) {
  const { job, opening, view, colors, storeyId, selectedIds } = props
  const { near, far } = openingSides(job, opening)
  return [near, far].map((side) => {
    if (side === null || side.room.storeyId !== storeyId || side.wall.length === 0) return null
    const { room, wall, place } = side
    const [from, to] = [place.from, place.to].map((at) =>
      toScreen(view, pointBetween(wall.start, wall.end, at / wall.length)),
    )
    if (from === undefined || to === undefined || screenDistance(from, to) < narrowest) return null
    const off =
      ((wall.inside === 'right' ? 1 : -1) * (selectedIds.includes(room.id) ? insetBehindLengths : inset)) /
      screenDistance(from, to)
    const way = place.from <= place.to ? off : -off
    return (
      <Text
        key={room.id}
        text={openingLetter(job, opening.id, room.id)}
        x={(from.left + to.left) / 2 - (to.top - from.top) * way}
        y={(from.top + to.top) / 2 + (to.left - from.left) * way}
        offsetX={12}
        offsetY={5}
        width={24}
        align="center"
        fontFamily={colors.face}
        fontSize={10}
        fontStyle="600"
        fill={selectedIds.includes(opening.id) ? colors.act : colors.darkSoft}
        listening={false}
      />
    )
  })
})

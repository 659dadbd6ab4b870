import { Group, Label, Line, Rect, Tag, Text } from 'react-konva'
import { type Point, pointBetween, pointsDistance } from '../../core/geometry/point.ts'
import type { SnapGuide } from '../../core/sketch/snapping.ts'
import { formatLength, type LengthUnitSystem } from '../../core/units/length.ts'
import type { Ink } from './ink.ts'
import type { Gesture } from './tools/tool.ts'
import { toScreen, type View } from './view.ts'

interface GestureDrawingProps {
  readonly gesture: Gesture
  readonly view: View
  readonly ink: Ink
  readonly system: LengthUnitSystem
}

/** What the hand is in the middle of: lines being drawn with their lengths, and the guides they catch on. */
export function GestureDrawing(props: GestureDrawingProps) {
  const { gesture } = props
  return (
    <Group listening={false}>
      {'guides' in gesture ? <Guides guides={gesture.guides} view={props.view} ink={props.ink} /> : null}
      <Strokes {...props} />
    </Group>
  )
}

function Strokes(props: GestureDrawingProps) {
  const { gesture, view, ink } = props
  switch (gesture.kind) {
    case 'hovering':
      return <Cross at={toScreen(view, gesture.point)} ink={ink} />
    case 'drawingRectangle': {
      const { from, to } = gesture
      const sides = [
        [from, { x: to.x, y: from.y }],
        [{ x: to.x, y: from.y }, to],
        [to, { x: from.x, y: to.y }],
        [{ x: from.x, y: to.y }, from],
      ] as const
      return (
        <>
          {sides.map(([a, b], index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: four fixed sides
            <Side key={index} {...props} from={a} to={b} isNamed={index < 2} />
          ))}
          <Typed {...props} at={to} text={gesture.typed} />
        </>
      )
    }
    case 'drawingOutline': {
      const points = [...gesture.corners, gesture.to]
      return (
        <>
          {points.slice(1).map((point, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: sides in the order they were drawn
            <Side key={index} {...props} from={points[index] as Point} to={point} isNamed />
          ))}
          {gesture.corners.map((corner, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: corners in the order they were drawn
            <Cross key={index} at={toScreen(view, corner)} ink={ink} />
          ))}
          <Typed {...props} at={gesture.to} text={gesture.typed} />
        </>
      )
    }
    case 'sweeping': {
      const [a, b] = [toScreen(view, gesture.from), toScreen(view, gesture.to)]
      return (
        <Rect
          x={Math.min(a.x, b.x)}
          y={Math.min(a.y, b.y)}
          width={Math.abs(b.x - a.x)}
          height={Math.abs(b.y - a.y)}
          stroke={ink.act}
          dash={[5, 4]}
          fill={ink.actSoft}
          opacity={0.5}
        />
      )
    }
    default:
      return null
  }
}

function Side(
  props: GestureDrawingProps & { readonly from: Point; readonly to: Point; readonly isNamed: boolean },
) {
  const { view, ink, system } = props
  const [a, b] = [toScreen(view, props.from), toScreen(view, props.to)]
  return (
    <>
      <Line points={[a.x, a.y, b.x, b.y]} stroke={ink.act} strokeWidth={2.25} />
      {props.isNamed ? (
        <Note
          at={pointBetween(a, b, 0.5)}
          text={formatLength(Math.round(pointsDistance(props.from, props.to)), system)}
          ink={ink}
        />
      ) : null}
    </>
  )
}

function Typed(props: GestureDrawingProps & { readonly at: Point; readonly text: string }) {
  if (props.text === '') return null
  const at = toScreen(props.view, props.at)
  return <Note at={{ x: at.x + 18, y: at.y + 26 }} text={`${props.text}▏`} ink={props.ink} isStrong />
}

function Note(props: {
  readonly at: Point
  readonly text: string
  readonly ink: Ink
  readonly isStrong?: boolean
}) {
  const { ink } = props
  return (
    <Label x={props.at.x} y={props.at.y} offsetX={props.text.length * 3.4 + 6} offsetY={10}>
      <Tag fill={props.isStrong ? ink.act : ink.paper} stroke={ink.act} strokeWidth={1} cornerRadius={2} />
      <Text
        text={props.text}
        fontFamily={ink.face}
        fontSize={12.5}
        padding={4}
        fill={props.isStrong ? ink.paperRaised : ink.ink}
      />
    </Label>
  )
}

function Cross(props: { readonly at: Point; readonly ink: Ink }) {
  const { x, y } = props.at
  return (
    <>
      <Line points={[x - 6, y, x + 6, y]} stroke={props.ink.act} strokeWidth={1.25} />
      <Line points={[x, y - 6, x, y + 6]} stroke={props.ink.act} strokeWidth={1.25} />
    </>
  )
}

function Guides(props: { readonly guides: readonly SnapGuide[]; readonly view: View; readonly ink: Ink }) {
  return props.guides
    .filter((guide) => guide.kind !== 'grid')
    .map((guide, index) => {
      const [a, b] = [toScreen(props.view, guide.from), toScreen(props.view, guide.to)]
      const key = `${guide.kind} ${index}`
      if (guide.kind === 'corner')
        return (
          <Rect
            key={key}
            x={b.x - 6}
            y={b.y - 6}
            width={12}
            height={12}
            stroke={props.ink.wait}
            strokeWidth={2}
          />
        )
      return (
        <Line key={key} points={[a.x, a.y, b.x, b.y]} stroke={props.ink.wait} strokeWidth={1} dash={[6, 4]} />
      )
    })
}

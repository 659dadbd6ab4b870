import type { ReactNode } from 'react'
import { Group, Label, Line, Rect, Tag, Text } from 'react-konva'
import { type Point, pointsDistance } from '../../core/geometry/point.ts'
import type { SnapGuide } from '../../core/sketch/snapping.ts'
import { formatLength, type LengthUnitSystem } from '../../core/units/length.ts'
import type { DrawingColors } from './drawing-colors.ts'
import { linePoints, type ScreenPoint, screenBetween } from './screen-point.ts'
import type { Gesture, GestureOf } from './tools/tool.ts'
import { toScreen, type View } from './view.ts'

interface GestureDrawingProps {
  readonly gesture: Gesture
  readonly view: View
  readonly colors: DrawingColors
  readonly system: LengthUnitSystem
}

type StrokeLook = Omit<GestureDrawingProps, 'gesture'>

/** The gesture that is going on: lines being drawn with their lengths, and the guides they catch on. */
export function GestureDrawing({ gesture, ...props }: GestureDrawingProps) {
  return (
    <Group listening={false}>
      {'guides' in gesture ? (
        <Guides guides={gesture.guides} view={props.view} colors={props.colors} />
      ) : null}
      {isDrawn(gesture) ? strokesOf(gesture, props) : null}
    </Group>
  )
}

type Drawn = 'hovering' | 'drawingRectangle' | 'drawingOutline' | 'sweeping'

type StrokeProps<Kind extends Drawn> = StrokeLook & { readonly gesture: GestureOf<Kind> }

/** How each gesture that draws something of its own looks. What is moved shows in the drafted rooms. */
const strokes: { readonly [Kind in Drawn]: (props: StrokeProps<Kind>) => ReactNode } = {
  hovering: ({ gesture, view, colors }) => <Cross at={toScreen(view, gesture.point)} colors={colors} />,
  drawingRectangle: RectangleStrokes,
  drawingOutline: OutlineStrokes,
  sweeping: SweepStrokes,
}

function isDrawn(gesture: Gesture): gesture is GestureOf<Drawn> {
  return Object.hasOwn(strokes, gesture.kind)
}

function strokesOf<Kind extends Drawn>(
  gesture: { [Each in Kind]: GestureOf<Each> }[Kind],
  props: StrokeLook,
): ReactNode {
  return strokes[gesture.kind]({ ...props, gesture })
}

function RectangleStrokes({ gesture, ...props }: StrokeProps<'drawingRectangle'>) {
  const { from, to } = gesture
  const [across, down] = [
    { x: to.x, y: from.y },
    { x: from.x, y: to.y },
  ]
  return (
    <>
      <Side {...props} from={from} to={across} isNamed />
      <Side {...props} from={across} to={to} isNamed />
      <Side {...props} from={to} to={down} isNamed={false} />
      <Side {...props} from={down} to={from} isNamed={false} />
      <Typed {...props} at={to} text={gesture.typed} />
    </>
  )
}

function OutlineStrokes({ gesture, ...props }: StrokeProps<'drawingOutline'>) {
  const { corners, to } = gesture
  return (
    <>
      {corners.map((corner, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: sides in the order they were drawn
        <Side key={index} {...props} from={corner} to={corners[index + 1] ?? to} isNamed />
      ))}
      {corners.map((corner, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: corners in the order they were drawn
        <Cross key={index} at={toScreen(props.view, corner)} colors={props.colors} />
      ))}
      <Typed {...props} at={to} text={gesture.typed} />
    </>
  )
}

function SweepStrokes({ gesture, view, colors }: StrokeProps<'sweeping'>) {
  const [a, b] = [toScreen(view, gesture.from), toScreen(view, gesture.to)]
  return (
    <Rect
      x={Math.min(a.left, b.left)}
      y={Math.min(a.top, b.top)}
      width={Math.abs(b.left - a.left)}
      height={Math.abs(b.top - a.top)}
      stroke={colors.act}
      dash={[5, 4]}
      fill={colors.actSoft}
      opacity={0.5}
    />
  )
}

function Side(props: StrokeLook & { readonly from: Point; readonly to: Point; readonly isNamed: boolean }) {
  const { view, colors, system } = props
  const [a, b] = [toScreen(view, props.from), toScreen(view, props.to)]
  return (
    <>
      <Line points={linePoints([a, b])} stroke={colors.act} strokeWidth={2.25} />
      {props.isNamed ? (
        <Note
          at={screenBetween(a, b, 0.5)}
          text={formatLength(Math.round(pointsDistance(props.from, props.to)), system)}
          colors={colors}
        />
      ) : null}
    </>
  )
}

function Typed(props: StrokeLook & { readonly at: Point; readonly text: string }) {
  if (props.text === '') return null
  const at = toScreen(props.view, props.at)
  return (
    <Note
      at={{ left: at.left + 18, top: at.top + 26 }}
      text={`${props.text}▏`}
      colors={props.colors}
      isStrong
    />
  )
}

function Note(props: {
  readonly at: ScreenPoint
  readonly text: string
  readonly colors: DrawingColors
  readonly isStrong?: boolean
}) {
  const { colors } = props
  return (
    <Label x={props.at.left} y={props.at.top} offsetX={props.text.length * 3.4 + 6} offsetY={10}>
      <Tag
        fill={props.isStrong ? colors.act : colors.paper}
        stroke={colors.act}
        strokeWidth={1}
        cornerRadius={2}
      />
      <Text
        text={props.text}
        fontFamily={colors.face}
        fontSize={12.5}
        padding={4}
        fill={props.isStrong ? colors.onAct : colors.dark}
      />
    </Label>
  )
}

function Cross(props: { readonly at: ScreenPoint; readonly colors: DrawingColors }) {
  const { left, top } = props.at
  return (
    <>
      <Line points={[left - 6, top, left + 6, top]} stroke={props.colors.act} strokeWidth={1.25} />
      <Line points={[left, top - 6, left, top + 6]} stroke={props.colors.act} strokeWidth={1.25} />
    </>
  )
}

function Guides(props: {
  readonly guides: readonly SnapGuide[]
  readonly view: View
  readonly colors: DrawingColors
}) {
  return props.guides
    .filter((guide) => guide.kind !== 'grid')
    .map((guide, index) => {
      const [a, b] = [toScreen(props.view, guide.from), toScreen(props.view, guide.to)]
      const key = `${guide.kind} ${index}`
      if (guide.kind === 'corner')
        return (
          <Rect
            key={key}
            x={b.left - 6}
            y={b.top - 6}
            width={12}
            height={12}
            stroke={props.colors.wait}
            strokeWidth={2}
          />
        )
      return (
        <Line
          key={key}
          points={linePoints([a, b])}
          stroke={props.colors.wait}
          strokeWidth={1}
          dash={[6, 4]}
        />
      )
    })
}

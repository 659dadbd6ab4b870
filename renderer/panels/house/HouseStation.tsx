import './house.css'
import { useEffect } from 'react'
import { isTyping } from '../../app/keys.ts'
import { fitStorey, handle, nudge } from '../../canvas/hand.ts'
import { SketchStage } from '../../canvas/SketchStage.tsx'
import type { ToolName } from '../../canvas/tools/tool.ts'
import { toolWords } from '../../canvas/tools/tools.ts'
import { sketchStore, takeTool, useSketch } from '../../state/sketch-store.ts'
import { copySelected, duplicateSelected, pasteCopied, removeSelected, selectAll } from './deeds.ts'
import { FigureStrip } from './FigureStrip.tsx'
import { Inspector } from './Inspector.tsx'
import { SheetList } from './SheetList.tsx'
import { zoomBy } from './sight.ts'
import { SightStrip, ToolStrip } from './ToolStrip.tsx'

/** Sketch rooms and openings; read what they measure. */
export function HouseStation() {
  useEffect(() => {
    window.addEventListener('keydown', onKey)
    return () => window.removeEventListener('keydown', onKey)
  }, [])
  const tool = useSketch((state) => state.tool)
  return (
    <div className="house">
      <SheetList />
      <section className="house-sheet" aria-label="Sketch">
        <ToolStrip />
        <div className="sheet-place">
          <SketchStage />
          <SightStrip />
        </div>
        <p className="tool-hint">
          {toolWords[tool].hint}{' '}
          <span className="quiet">Hold Alt to place freely, Space to shift the sheet, Esc to stop.</span>
        </p>
        <FigureStrip />
      </section>
      <Inspector />
    </div>
  )
}

function onKey(event: KeyboardEvent): void {
  if (isTyping(event.target) || isElsewhere(event.target)) return
  const { gesture } = sketchStore.getState()
  const isDrawing = gesture.kind === 'drawingRectangle' || gesture.kind === 'drawingOutline'
  if (event.ctrlKey || event.metaKey) {
    onControlKey(event)
    return
  }
  if (event.altKey) return
  if (isDrawing || event.key === 'Escape') {
    event.preventDefault()
    const endsTool =
      event.key === 'Escape' && gesture.kind !== 'drawingRectangle' && gesture.kind !== 'drawingOutline'
    handle({ kind: 'key', key: event.key })
    if (endsTool && sketchStore.getState().tool !== 'pick') takeTool('pick')
    return
  }
  onPlainKey(event)
}

function onPlainKey(event: KeyboardEvent): void {
  const tool = (Object.keys(toolWords) as ToolName[]).find(
    (name) => toolWords[name].key === event.key.toLowerCase(),
  )
  const action = tool === undefined ? plainKeys[event.key] : () => takeTool(tool)
  if (action === undefined) return
  event.preventDefault()
  action()
}

const plainKeys: Readonly<Record<string, () => void>> = {
  Delete: removeSelected,
  Backspace: removeSelected,
  ArrowLeft: () => nudge(-1, 0),
  ArrowRight: () => nudge(1, 0),
  ArrowUp: () => nudge(0, -1),
  ArrowDown: () => nudge(0, 1),
  '+': () => zoomBy(1.25),
  '=': () => zoomBy(1.25),
  '-': () => zoomBy(0.8),
  '0': fitStorey,
}

function onControlKey(event: KeyboardEvent): void {
  const action = controlKeys[event.key.toLowerCase()]
  if (action === undefined) return
  event.preventDefault()
  action()
}

const controlKeys: Readonly<Record<string, () => void>> = {
  c: copySelected,
  v: pasteCopied,
  d: duplicateSelected,
  a: selectAll,
}

/** Keys in the fields beside the drawing belong to those; a name in the list of rooms is as good as the room on the sheet. */
function isElsewhere(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement && target.closest('.inspector, [role="dialog"], [role="listbox"]') !== null
  )
}

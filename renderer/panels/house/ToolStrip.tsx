import { fitStorey } from '../../canvas/sketch-input.ts'
import { sketchStore, takeTool, useSketch } from '../../canvas/sketch-store.ts'
import type { ToolName } from '../../canvas/tools/tool.ts'
import { toolWords } from '../../canvas/tools/tools.ts'
import { showTapeList } from '../../state/tape-list.ts'
import { zoomBy } from './storey-view.ts'
import { listSign, toolSigns } from './tool-signs.tsx'

const groups: readonly (readonly ToolName[])[] = [
  ['pick'],
  ['rectangle', 'outline'],
  ['door', 'casedOpening', 'window'],
  ['fireplace', 'builtIn', 'other'],
]

export function ToolStrip() {
  const current = useSketch((state) => state.tool)
  return (
    <div className="tool-strip" role="toolbar" aria-label="Drawing tools">
      {groups.map((group) => (
        <div key={group.join()} className="tool-group">
          {group.map((tool) => (
            <button
              key={tool}
              type="button"
              className="tool"
              aria-pressed={tool === current}
              title={`${toolWords[tool].name} (${toolWords[tool].key.toUpperCase()})`}
              onClick={() => takeTool(tool)}
            >
              {toolSigns[tool]}
              <span>{toolWords[tool].name}</span>
            </button>
          ))}
        </div>
      ))}
      <div className="tool-group">
        <button
          type="button"
          className="tool"
          title="Many rooms at once (L)"
          onClick={() => showTapeList(true)}
        >
          {listSign}
          <span>List of rooms</span>
        </button>
      </div>
    </div>
  )
}

/** How the sheet is looked at, in its corner. */
export function ViewStrip() {
  const showsGrid = useSketch((state) => state.showsGrid)
  return (
    <div className="tool-group tool-view" role="toolbar" aria-label="View">
      <button
        type="button"
        className="tool"
        aria-label="Nearer"
        title="Nearer (+)"
        onClick={() => zoomBy(1.25)}
      >
        +
      </button>
      <button
        type="button"
        className="tool"
        aria-label="Farther"
        title="Farther (-)"
        onClick={() => zoomBy(0.8)}
      >
        −
      </button>
      <button type="button" className="tool" title="Whole floor (0)" onClick={fitStorey}>
        Whole floor
      </button>
      <button
        type="button"
        className="tool"
        aria-pressed={showsGrid}
        onClick={() => sketchStore.setState({ showsGrid: !showsGrid })}
      >
        Grid
      </button>
    </div>
  )
}

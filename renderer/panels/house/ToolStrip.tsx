import { Button } from 'react-aria-components'
import { fitStorey } from '../../canvas/sketch-input.ts'
import { sketchStore, takeTool, useSketch } from '../../canvas/sketch-store.ts'
import type { ToolName } from '../../canvas/tools/tool.ts'
import { toolWords } from '../../canvas/tools/tools.ts'
import { showTapeList } from '../../state/tape-list.ts'
import { HintButton } from '../parts/HintButton.tsx'
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
            <HintButton
              key={tool}
              className="tool"
              aria-pressed={tool === current}
              hint={`${toolWords[tool].name} (${toolWords[tool].key.toUpperCase()})`}
              onPress={() => takeTool(tool)}
            >
              {toolSigns[tool]}
              <span>{toolWords[tool].name}</span>
            </HintButton>
          ))}
        </div>
      ))}
      <div className="tool-group">
        <HintButton className="tool" hint="Many rooms at once (L)" onPress={() => showTapeList(true)}>
          {listSign}
          <span>List of rooms</span>
        </HintButton>
      </div>
    </div>
  )
}

/** How the sheet is looked at, in its corner. */
export function ViewStrip() {
  const showsGrid = useSketch((state) => state.showsGrid)
  return (
    <div className="tool-group tool-view" role="toolbar" aria-label="View">
      <HintButton className="tool" aria-label="Zoom in" hint="Zoom in (+)" onPress={() => zoomBy(1.25)}>
        +
      </HintButton>
      <HintButton className="tool" aria-label="Zoom out" hint="Zoom out (-)" onPress={() => zoomBy(0.8)}>
        −
      </HintButton>
      <HintButton className="tool" hint="Whole floor (0)" onPress={fitStorey}>
        Whole floor
      </HintButton>
      <Button
        className="tool"
        aria-pressed={showsGrid}
        onPress={() => sketchStore.setState({ showsGrid: !showsGrid })}
      >
        Grid
      </Button>
    </div>
  )
}

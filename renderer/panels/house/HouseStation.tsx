import './house.css'
import { useEffect } from 'react'
import { SketchStage } from '../../canvas/SketchStage.tsx'
import { useSketch } from '../../canvas/sketch-store.ts'
import { toolWords } from '../../canvas/tools/tools.ts'
import { FigureStrip } from './FigureStrip.tsx'
import { listenForHouseKeys } from './house-keys.ts'
import { Inspector } from './Inspector.tsx'
import { SheetList } from './SheetList.tsx'
import { SketchNews } from './SketchNews.tsx'
import { ToolStrip, ViewStrip } from './ToolStrip.tsx'
import { TapeList } from './tape-list/TapeList.tsx'

/** Sketch rooms and openings; read what they measure. */
export function HouseStation() {
  useEffect(listenForHouseKeys, [])
  const tool = useSketch((state) => state.tool)
  return (
    <div className="house">
      <SheetList />
      <section className="house-sheet" aria-label="Sketch">
        <ToolStrip />
        <div className="sheet-place">
          <SketchStage />
          <ViewStrip />
        </div>
        <p className="tool-hint" id="tool-hint">
          {toolWords[tool].hint}{' '}
          <span className="quiet">Hold Alt to place freely, Space to move the drawing, Esc to stop.</span>
        </p>
        <FigureStrip />
        <SketchNews />
      </section>
      <Inspector />
      <TapeList />
    </div>
  )
}

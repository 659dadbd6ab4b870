import { openingTool } from './opening.ts'
import { outlineTool } from './outline.ts'
import { pickTool } from './pick.ts'
import { rectangleTool } from './rectangle.ts'
import type { Tool, ToolName } from './tool.ts'

export const tools: Readonly<Record<ToolName, Tool>> = {
  pick: pickTool,
  rectangle: rectangleTool,
  outline: outlineTool,
  door: openingTool('door'),
  casedOpening: openingTool('casedOpening'),
  window: openingTool('window'),
  fireplace: openingTool('fireplace'),
  builtIn: openingTool('builtIn'),
  other: openingTool('other'),
}

/** The tools on the strip over the sheet, each with its name and its key. */
export const toolWords: Readonly<
  Record<ToolName, { readonly name: string; readonly key: string; readonly hint: string }>
> = {
  pick: {
    name: 'Pick',
    key: 'v',
    hint: 'Click to select, drag to move a room, wall, corner or opening; drag on empty paper to sweep up several.',
  },
  rectangle: {
    name: 'Rectangle',
    key: 'r',
    hint: "Drag from corner to corner; or click a corner, type 12' x 10' 6\" and press Enter.",
  },
  outline: {
    name: 'Room by corners',
    key: 'c',
    hint: 'Click each corner, or point and type the length and Enter. Enter alone closes the room; Backspace takes a corner back.',
  },
  door: {
    name: 'Door',
    key: 'd',
    hint: 'Point at a wall and click. Where another room is right behind, the door is shared by both.',
  },
  casedOpening: {
    name: 'Cased opening',
    key: 'o',
    hint: 'A doorway without a door. Point at a wall and click.',
  },
  window: { name: 'Window', key: 'w', hint: 'Point at a wall and click; the next one takes after the last.' },
  fireplace: { name: 'Fireplace', key: 'f', hint: 'Point at a wall and click.' },
  builtIn: {
    name: 'Built-in',
    key: 'b',
    hint: 'A cabinet or bookcase set into the wall. Point at a wall and click.',
  },
  other: { name: 'Other opening', key: 'e', hint: 'Any other hole in a wall. Point at a wall and click.' },
}

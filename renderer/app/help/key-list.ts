/** One line of the list of keys: the names the program knows them by, and what they do. */
interface KeyLine {
  readonly keys: readonly string[]
  /** How the keys are shown where that is shorter than one after the other. */
  readonly shown?: string
  readonly does: string
  /** The browser or its controls listen to it, no table of the program. */
  readonly isBuiltIn?: true
}

export interface KeyPlace {
  readonly id: 'everywhere' | 'house' | 'drawing' | 'fields' | 'tables' | 'ticks' | 'walk' | 'calendar'
  readonly where: string
  readonly lines: readonly KeyLine[]
}

/** Every key of the program. The Help page shows it, README repeats it, and a test compares it with what the program listens to. */
export const keyPlaces: readonly KeyPlace[] = [
  {
    id: 'everywhere',
    where: 'Everywhere',
    lines: [
      { keys: ['F1'], does: 'Open this help' },
      {
        keys: ['Alt+1', 'Alt+2', 'Alt+3', 'Alt+4', 'Alt+5', 'Alt+6', 'Alt+7'],
        shown: 'Alt+1 to Alt+7',
        does: 'Go to a station, House to Paper',
      },
      { keys: ['Alt+J'], does: 'Open the job sheet' },
      { keys: ['Ctrl+Z'], does: 'Undo; while you type, undo the typing' },
      { keys: ['Ctrl+Shift+Z', 'Ctrl+Y'], does: 'Redo' },
      {
        keys: ['Tab', 'Shift+Tab'],
        does: 'Go to the next or the previous field, button, table or drawing',
        isBuiltIn: true,
      },
      { keys: ['Escape'], does: 'Close a sheet that lies over the page, such as this one', isBuiltIn: true },
    ],
  },
  {
    id: 'house',
    where: 'House, on the sheet',
    lines: [
      { keys: ['V'], does: 'Pick and move' },
      { keys: ['R'], does: 'Draw a rectangular room' },
      { keys: ['C'], does: 'Draw a room by its corners' },
      { keys: ['D'], does: 'Hang a door' },
      { keys: ['O'], does: 'Place a cased opening' },
      { keys: ['W'], does: 'Place a window' },
      { keys: ['F'], does: 'Place a fireplace' },
      { keys: ['B'], does: 'Place a built-in' },
      { keys: ['E'], does: 'Place any other opening' },
      { keys: ['A'], does: 'Place the last opening again' },
      { keys: ['L'], does: 'Write a list of rooms' },
      { keys: ['M'], does: 'Pick many at once, as all windows of a floor' },
      { keys: ['N'], does: 'Pick the next room of the floor' },
      { keys: ['P'], does: 'Pick the previous room' },
      {
        keys: ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'],
        shown: 'Arrow keys',
        does: 'Move what is selected by one step',
      },
      { keys: ['Delete', 'Backspace'], does: 'Remove what is selected' },
      { keys: ['Ctrl+A'], does: 'Select everything on this floor' },
      { keys: ['Ctrl+C'], does: 'Copy what is selected' },
      { keys: ['Ctrl+V'], does: 'Paste' },
      { keys: ['Ctrl+D'], does: 'Duplicate what is selected' },
      { keys: ['+', '='], does: 'Zoom in' },
      { keys: ['-'], does: 'Zoom out' },
      { keys: ['0'], does: 'Show the whole floor' },
      { keys: ['Space'], shown: 'Space, held', does: 'Move the drawing with the mouse' },
      { keys: ['Alt'], shown: 'Alt, held', does: 'Place freely, without catching on the grid or on walls' },
      { keys: ['Shift'], shown: 'Shift or Ctrl, held', does: 'Add to the selection, walls too' },
      { keys: ['Escape'], does: 'Put the tool down; then let the selection go' },
    ],
  },
  {
    id: 'drawing',
    where: 'While drawing a room',
    lines: [
      { keys: ['0-9'], shown: 'Digits, \' " - x', does: 'Type a length, or two with an x between them' },
      { keys: ['Enter'], does: 'Use the typed length; without one, close the room' },
      { keys: ['Backspace'], does: 'Take back a typed character, or the last corner' },
      { keys: ['Escape'], does: 'Cancel the room' },
    ],
  },
  {
    id: 'fields',
    where: 'In a field',
    lines: [
      { keys: ['Enter'], does: 'Enter what you typed' },
      { keys: ['Escape'], does: 'Put back what was there' },
      { keys: ['Ctrl+Enter'], does: 'In the list of rooms: make the rooms' },
    ],
  },
  {
    id: 'tables',
    where: 'In a table',
    lines: [
      { keys: ['ArrowUp', 'ArrowDown'], shown: 'Up, Down', does: 'Go to the row above or below' },
      { keys: ['Home', 'End'], does: 'Go to the first or the last row' },
      { keys: ['Enter', 'Space'], does: 'Pick the row, or open and close a group' },
    ],
  },
  {
    id: 'ticks',
    where: 'Site, in a list to check off',
    lines: [
      { keys: ['ArrowUp', 'ArrowDown'], shown: 'Up, Down', does: 'Go to the line above or below' },
      { keys: ['ArrowLeft', 'ArrowRight'], shown: 'Left, Right', does: 'Go along the line' },
      { keys: ['Home', 'End'], does: 'Go to the first or the last line' },
    ],
  },
  {
    id: 'walk',
    where: 'Walk',
    lines: [
      {
        keys: ['1', '2', '3', '4', '5', '6'],
        shown: '1 to 6',
        does: 'Write down a usual finding on the picked surface; once more adds to it',
      },
      { keys: ['S'], does: 'Nothing wrong with it; go on to what nobody has looked at yet' },
      { keys: ['N'], does: 'Go to the next room' },
      { keys: ['P'], does: 'Go to the previous room' },
    ],
  },
  {
    id: 'calendar',
    where: 'Calendar, on the plan',
    lines: [
      {
        keys: ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'],
        shown: 'Arrow keys',
        does: 'Go from pass to pass and from row to row',
      },
      { keys: ['Enter', 'Space'], does: 'Pick the pass' },
      {
        keys: ['Shift+ArrowLeft', 'Shift+ArrowRight'],
        shown: 'Shift+Left, Shift+Right',
        does: 'Move the pass by a quarter of an hour and try the plan with it there, when zoomed in from the whole job',
      },
      { keys: ['Escape'], does: 'Drop the trial' },
    ],
  },
]

/** `Ctrl+Shift+Z or Ctrl+Y`, as the list shows a line. */
export function shownKeys(line: KeyLine): string {
  return line.shown ?? line.keys.join(' or ').replaceAll('Escape', 'Esc')
}

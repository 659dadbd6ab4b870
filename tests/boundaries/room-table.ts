/** The rooms of core as the job goes, left to right; each may enter only those to its left. */
export const coreOrder = [
  'lists',
  'units',
  'time',
  'words',
  'geometry',
  'project',
  'pictures',
  'sketch',
  'quantities',
  'specification',
  'passes',
  'price',
  'schedule',
  'agreement',
  'work-order',
  'progress',
  'contract',
] as const

/** What files of one room may import. `node:` stands for everything of Node's own. A room may always enter itself. */
export interface RoomRule {
  readonly room: string
  readonly mayEnter: readonly string[]
  readonly mayName: readonly string[]
}

const corePackages: Readonly<Record<string, readonly string[]>> = {
  geometry: ['clipper2-ts'],
  project: ['zod'],
  sketch: ['zod'],
  'work-order': ['zod'],
  contract: ['zod'],
}

const coreRooms: readonly RoomRule[] = coreOrder.map((room, index) => ({
  room: `core/${room}`,
  mayEnter: coreOrder.slice(0, index).map((left) => `core/${left}`),
  mayName: corePackages[room] ?? [],
}))

/** What every station may enter and name. Stations never enter one another. */
const stationMayEnter = ['core', 'renderer/panels/parts', 'renderer/state']
const stationMayName = ['react', 'react-aria-components']

/** The rooms of the page, left to right; each enters rooms named before it only. */
const pageRooms: readonly RoomRule[] = [
  { room: 'renderer/bridge', mayEnter: ['core'], mayName: [] },
  { room: 'renderer/print', mayEnter: ['core'], mayName: ['react'] },
  {
    room: 'renderer/state',
    mayEnter: ['core', 'renderer/bridge'],
    mayName: ['pdfjs-dist', 'react', 'zod', 'zustand'],
  },
  {
    room: 'renderer/canvas',
    mayEnter: ['core', 'renderer/state'],
    mayName: ['react', 'react-aria-components', 'react-konva', 'zustand'],
  },
  {
    room: 'renderer/panels/parts',
    mayEnter: ['core', 'renderer/state'],
    mayName: ['react', 'react-aria-components'],
  },
  {
    room: 'renderer/panels/house',
    mayEnter: ['renderer/canvas', ...stationMayEnter],
    mayName: stationMayName,
  },
  { room: 'renderer/panels/walk', mayEnter: stationMayEnter, mayName: stationMayName },
  { room: 'renderer/panels/finish', mayEnter: stationMayEnter, mayName: stationMayName },
  { room: 'renderer/panels/figures', mayEnter: stationMayEnter, mayName: stationMayName },
  { room: 'renderer/panels/calendar', mayEnter: stationMayEnter, mayName: [...stationMayName, 'zustand'] },
  { room: 'renderer/panels/site', mayEnter: stationMayEnter, mayName: stationMayName },
  {
    room: 'renderer/panels/paper',
    mayEnter: ['renderer/bridge', 'renderer/print', ...stationMayEnter],
    mayName: [...stationMayName, 'zod'],
  },
  {
    room: 'renderer/app',
    mayEnter: ['core', 'renderer/bridge', 'renderer/panels', 'renderer/state'],
    mayName: ['react', 'react-aria-components', 'react-dom', 'zod', 'zustand'],
  },
]

/** The one table. DEVELOPERS.md prints it, and the test compares the two. */
export const roomTable: readonly RoomRule[] = [
  ...coreRooms,
  ...pageRooms,
  { room: 'electron/storage', mayEnter: ['core'], mayName: ['better-sqlite3', 'node:', 'zod'] },
  { room: 'electron/handlers', mayEnter: ['core', 'electron/storage'], mayName: ['node:', 'zod'] },
  { room: 'electron/pages', mayEnter: [], mayName: ['node:'] },
  {
    room: 'electron/main',
    mayEnter: ['core', 'electron/handlers', 'electron/pages', 'electron/storage'],
    mayName: ['electron', 'node:'],
  },
  { room: 'electron/preload', mayEnter: ['core/contract', 'core/project'], mayName: ['electron'] },
  {
    room: 'electron/loopback',
    mayEnter: ['core', 'electron/handlers', 'electron/pages', 'electron/storage'],
    mayName: ['node:'],
  },
  {
    room: 'electron/headless',
    mayEnter: ['core', 'electron/handlers', 'electron/storage'],
    mayName: ['node:'],
  },
  {
    room: 'electron/launch',
    mayEnter: [],
    mayName: ['@electron/fuses', '@electron/packager', '@vitejs/plugin-react', 'node:', 'vite'],
  },
  { room: 'demo-data', mayEnter: ['core'], mayName: ['node:'] },
]

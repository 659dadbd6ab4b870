/** The rooms of core as the job goes, left to right; each may enter only those to its left. */
export const coreOrder = [
  'units',
  'geometry',
  'project',
  'sketch',
  'quantities',
  'specification',
  'passes',
  'price',
  'schedule',
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

/** The one table. DEVELOPERS.md prints it, and the test compares the two. */
export const roomTable: readonly RoomRule[] = [
  ...coreRooms,
  { room: 'renderer/bridge', mayEnter: ['core'], mayName: [] },
  {
    room: 'renderer',
    mayEnter: ['core'],
    mayName: ['konva', 'react', 'react-aria-components', 'react-dom', 'react-konva', 'zod', 'zustand'],
  },
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

import type { RoomId } from '../project/sketch-records.ts'
import type { SurfaceClass } from '../project/vocabulary.ts'
import type { Operation, Step } from '../specification/types.ts'
import { capital, enumerated } from '../words/text.ts'
import { partOf } from './families.ts'
import type { PassKind } from './pass-types.ts'

/** What the name of one pass is made from. */
interface Named {
  readonly kind: PassKind
  /** 1, 2, 3 for coats; 0 otherwise. */
  readonly coat: number
  /** How many coats its part of the room set gets. */
  readonly coats: number
  readonly steps: readonly Step[]
  /** All steps of the passes that share its place. */
  readonly beside: readonly Step[]
  readonly mainRoomId: RoomId
  readonly roomName: (roomId: RoomId) => string
}

const classNames: Readonly<Record<SurfaceClass, string>> = {
  ceiling: 'ceiling',
  walls: 'walls',
  wainscot: 'wainscot',
  trim: 'trim',
  doors: 'doors',
  sash: 'windows',
  stairs: 'stairs',
  radiators: 'radiators',
  builtWork: 'built work',
}
const ordinals = ['', 'first', 'second', 'third', 'fourth', 'fifth', 'sixth']
const partNames = { ceiling: 'Ceiling', woodwork: 'Woodwork', walls: 'Walls', stairs: 'Stairs' } as const

/** In the words of the trade: `Woodwork, second coat: windows and doors`, `Fill walls; sand woodwork`. */
export function passName(named: Named): string {
  switch (named.kind) {
    case 'setUp':
      return capital(['set up', ...doings(named)].join('; '))
    case 'putBack':
      return 'Put back, clean up, look over'
    case 'repair':
    case 'slow':
    case 'sand':
    case 'prime':
      return capital(
        [...repairs(named), ...doings(named), ...cleaning(named)].join('; ') || 'vacuum the room',
      )
    default:
      return coatName(named, named.kind)
  }
}

const repairing: ReadonlySet<Operation> = new Set(['openCrack', 'fill', 'fillSmall'])

/** Where the small holes of a room are filled, all filling is said in one word. */
function repairs({ steps }: Named): readonly string[] {
  return areRepairs(steps) ? ['repairs'] : []
}

function areRepairs(steps: readonly Step[]): boolean {
  return steps.some(({ operation }) => operation === 'fillSmall')
}

/** The cleaning that lead-safe work ends with before the coats. */
function cleaning({ steps }: Named): readonly string[] {
  const isCleaned = steps.some(({ operation }) => operation === 'cleanFinal' || operation === 'wipeCheck')
  return isCleaned ? ['clean and check the room'] : []
}

function coatName(named: Named, part: keyof typeof partNames): string {
  const coated = named.steps.filter(({ operation }) => operation === 'coat')
  const all = named.beside.filter(({ operation }) => operation === 'coat')
  const classes = new Set(coated.map(({ surfaceClass }) => surfaceClass))
  const only = part === 'woodwork' && classes.size === 1 ? [...classes][0] : undefined
  const base = only == null || coated.length < all.length ? partNames[part] : capital(classNames[only])
  const coat = named.coats > 1 ? `, ${ordinals[named.coat] ?? `${named.coat}th`} coat` : ''
  if (coated.length === all.length) return `${base}${coat}`
  const rooms = [...new Set(coated.map(({ roomId }) => named.roomName(roomId)))]
  return `${base}${coat}: ${enumerated(part === 'woodwork' ? places(named, coated) : rooms)}`
}

/** What a name says is done, at what of a place, and by which operations: `open` `cracks in` the walls. */
interface Word {
  readonly verb: string
  readonly at: string
  readonly operations: readonly Operation[]
}

const words: readonly Word[] = [
  { verb: 'wash', at: '', operations: ['wash'] },
  { verb: 'wash', at: 'mildew off', operations: ['washMildew'] },
  { verb: 'strip', at: 'wallpaper off', operations: ['stripWallpaper'] },
  { verb: 'wash', at: 'paste off', operations: ['washOffSize'] },
  { verb: 'wash', at: 'calcimine off', operations: ['washOffCalcimine'] },
  { verb: 'fasten', at: 'plaster of', operations: ['reattachPlaster'] },
  { verb: 'drive', at: 'fasteners in', operations: ['driveFastener'] },
  { verb: 'free', at: '', operations: ['freeSash'] },
  { verb: 'scrape', at: '', operations: ['scrape'] },
  { verb: 'treat', at: 'rust on', operations: ['treatRust'] },
  { verb: 'open', at: 'cracks in', operations: ['openCrack'] },
  { verb: 'putty', at: '', operations: ['puttySash'] },
  { verb: 'fill', at: '', operations: ['fill'] },
  { verb: 'skim', at: '', operations: ['skim'] },
  { verb: 'sand', at: '', operations: ['sand'] },
  { verb: 'sand', at: 'patches on', operations: ['sandFill', 'sandPatch'] },
  { verb: 'seal', at: '', operations: ['sealChalk', 'sealBare'] },
  { verb: 'block', at: 'stains on', operations: ['blockStain'] },
  { verb: 'prime', at: 'patches on', operations: ['spotPrime'] },
  { verb: 'prime', at: '', operations: ['prime'] },
  { verb: 'coat', at: '', operations: ['coat'] },
  { verb: 'caulk', at: '', operations: ['caulk'] },
]

/** What is done where; things done alike to the same places are said together: `open cracks in walls`, `sand and seal windows`. */
function doings(named: Named): readonly string[] {
  const together = new Map<string, string[]>()
  const said = areRepairs(named.steps)
    ? named.steps.filter(({ operation }) => !repairing.has(operation))
    : named.steps
  for (const { verb, at, operations } of words) {
    const steps = said.filter(({ operation }) => operations.includes(operation))
    const where = `${at} ${enumerated(places(named, steps))}`.trim()
    if (steps.length > 0) together.set(where, [...(together.get(where) ?? []), verb])
  }
  return [...together].map(([where, verbs]) => `${enumerated(verbs)} ${where}`)
}

/** `woodwork` where most of it is meant, else the classes; the rooms beside the main one by their names. */
function places(named: Named, steps: readonly Step[]): readonly string[] {
  const inMain = classesOf(steps.filter(({ roomId }) => roomId === named.mainRoomId))
  const wood = inMain.filter((each) => partOf(each) === 'woodwork')
  const broad = inMain.filter((each) => partOf(each) !== 'woodwork').map((each) => classNames[each])
  const isPart = steps.length < named.beside.filter((step) => steps[0]?.operation === step.operation).length
  const woodNames = wood.length > 2 && !isPart ? ['woodwork'] : wood.map((each) => classNames[each])
  const others = [...new Set(steps.map(({ roomId }) => roomId).filter((id) => id !== named.mainRoomId))]
  const isAlongside = inMain.length > 0 && !isPart
  return [...broad, ...woodNames, ...(isAlongside ? [] : others.map((id) => named.roomName(id)))]
}

function classesOf(steps: readonly Step[]): readonly SurfaceClass[] {
  return [...new Set(steps.flatMap(({ surfaceClass }) => surfaceClass ?? []))]
}

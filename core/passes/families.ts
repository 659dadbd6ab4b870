import type { SurfaceClass } from '../project/vocabulary.ts'
import type { Operation, Step } from '../specification/types.ts'
import { type Bundled, isFilm } from './bundles.ts'
import type { PartOfRoom } from './template.ts'

/** What a bundle is, and so which places it may take. */
export type Family = 'setUp' | 'slow' | 'repair' | 'sand' | 'prime' | 'coat' | 'unmask' | 'putBack'

/** Elapsed minutes. What dries longer than this is a visit of its own, together with all that has to come before it. */
const slowWait = 2 * 1440

const families: Partial<Readonly<Record<Operation, Family>>> = {
  protectRoom: 'setUp',
  postSigns: 'setUp',
  sheetFloor: 'setUp',
  sealOpenings: 'setUp',
  takeOff: 'setUp',
  loosenHanging: 'setUp',
  coverAlarm: 'setUp',
  dustDown: 'setUp',
  sandPatch: 'sand',
  sandFill: 'sand',
  sand: 'sand',
  vacuum: 'sand',
  dustOff: 'sand',
  cleanDaily: 'sand',
  bagSheeting: 'sand',
  cleanFinal: 'sand',
  wipeCheck: 'sand',
  maskOff: 'prime',
  degloss: 'prime',
  coat: 'coat',
  unmask: 'unmask',
  easeSash: 'putBack',
  scrapeGlass: 'putBack',
  refitHanging: 'putBack',
  putBack: 'putBack',
  touchUp: 'putBack',
  cleanUp: 'putBack',
  inspect: 'putBack',
  restoreAlarm: 'putBack',
}

/** Of all bundles, by their index. */
export function familiesOf(bundled: Bundled): readonly Family[] {
  const slow = slowBundles(bundled)
  return bundled.bundles.map(({ lead }, index) => {
    const family = familyOf(lead)
    return slow.has(index) && family !== 'setUp' ? 'slow' : family
  })
}

function familyOf({ key, operation, groupKey }: Step): Family {
  if (key.endsWith('/dustDown/held')) return 'repair'
  if (groupKey === 'room' && operation === 'maskOff') return 'setUp'
  if (groupKey === 'room' && operation === 'unmask') return 'putBack'
  return families[operation] ?? (isFilm(operation) ? 'prime' : 'repair')
}

/** Everything that something slow waits for, and the slow thing: putty that forms its skin, plaster that cures. */
function slowBundles({ bundles, edges }: Bundled): ReadonlySet<number> {
  const slow = new Set(edges.filter(({ wait }) => wait >= slowWait).map(({ before }) => before))
  for (const { before, after } of edges.toSorted((one, other) => other.after - one.after)) {
    if (slow.has(after)) slow.add(before)
  }
  return new Set([...slow].filter((index) => bundles[index]?.lead.groupKey !== 'room'))
}

/** Whatever is neither ceiling, walls nor stairs is woodwork, radiators too: one hand with one brush goes round. */
export function partOf(surfaceClass: SurfaceClass | null): PartOfRoom {
  return surfaceClass === 'ceiling' || surfaceClass === 'walls' || surfaceClass === 'stairs'
    ? surfaceClass
    : 'woodwork'
}

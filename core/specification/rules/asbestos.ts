import type { Finding } from '../findings.ts'
import type { Group } from '../groups.ts'
import type { HoldNeed } from '../holds.ts'
import type { RoomRule, RoomView } from '../rule.ts'
import { holdDays, number } from '../step-requests.ts'
import { surfaceNoun } from '../trade-words.ts'
import type { Notice } from '../types.ts'

const source =
  'US EPA public text: cannot be told by looking, leave undisturbed material alone, sampling by a professional; patching compounds with asbestos banned in 1977 (16 CFR 1304, memory)'

const asbestosSuspicion: RoomRule = {
  id: 'asbestos-suspicion',
  level: 'room',
  theme: 'asbestos',
  title: 'Asbestos suspicion',
  found: 'Textured ceilings and old compound in a house built before 1980, or of unknown age.',
  reason:
    'Sprayed textures and compounds from before 1980 may hold asbestos and nobody can tell by looking: they are left alone or sampled by a professional before they are scraped or sanded.',
  source,
  safety: 'asbestos',
  on: true,
  numbers: {
    builtBefore: number(
      1980,
      'year',
      'Houses built before this may hold asbestos in textures and compound',
      source,
    ),
    ...holdDays(10),
  },
  holds: (view) =>
    view.groups.filter((group) => isTouched(view, group)).map((group) => samplingHold(view, group)),
  notices: (view) =>
    view.groups
      .filter((group) => isSuspected(view, group) && !isTouched(view, group))
      .map((group) => leaveAlone(view, group)),
}

/** The house was built before the year that the rule says, or nobody knows when. */
export function mayHoldAsbestos(view: Pick<RoomView, 'job' | 'book'>): boolean {
  const { yearBuilt } = view.job.header
  return yearBuilt === null || yearBuilt < view.book.number('asbestos-suspicion', 'builtBefore')
}

/** A texture, or an old patch that is to be sanded, on board or plaster. */
export function isSuspect(group: Group): boolean {
  const broad = group.surfaceClass === 'ceiling' || group.surfaceClass === 'walls'
  return broad && (group.textured || hasOldCompound(group))
}

function hasOldCompound(group: Group): boolean {
  return compoundIn(group).length > 0
}

function compoundIn({ findings }: Group): readonly Finding[] {
  return findings.filter(({ condition }) => ['unwantedTexture', 'unsandedPatch'].includes(condition.kind))
}

function isSuspected(view: RoomView, group: Group): boolean {
  return mayHoldAsbestos(view) && isSuspect(group)
}

/** Something is planned that would cut into it. */
function isTouched(view: RoomView, group: Group): boolean {
  return isSuspected(view, group) && (hasOldCompound(group) || view.disturbedGroups.has(group.key))
}

const suspectPart = (group: Group) => (group.textured ? 'texture' : 'old compound')
const keysOf = (group: Group) => group.quantities.map((quantity) => quantity.key)

/** A texture is on all of the group; an old patch is on the walls it was found on. */
function suspectKeys(group: Group): readonly string[] {
  if (group.textured) return keysOf(group)
  const keys = new Set(compoundIn(group).flatMap(({ surfaceKeys }) => surfaceKeys))
  return keysOf(group).filter((key) => keys.has(key))
}

function samplingHold(view: RoomView, group: Group): HoldNeed {
  return {
    kind: 'asbestos',
    surfaceKeys: suspectKeys(group),
    reason: `The ${suspectPart(group)} on the ${surfaceNoun(group.surfaceClass)} of ${view.room.name} may hold asbestos: have it sampled by a professional before anything on it is scraped, skimmed or sanded.`,
    since: null,
    days: view.book.number('asbestos-suspicion', 'holdDays'),
    source,
  }
}

function leaveAlone(view: RoomView, group: Group): Notice {
  return {
    kind: 'asbestosSuspicion',
    roomId: view.room.id,
    surfaceKeys: keysOf(group),
    sentence: `The ${suspectPart(group)} on the ${surfaceNoun(group.surfaceClass)} of ${view.room.name} may hold asbestos: nobody can tell by looking. Leave it undisturbed: no scraping, no sanding.`,
    source,
    hold: false,
  }
}

export const asbestosRules = [asbestosSuspicion] as const

import { type LeadVerdict, leadVerdict } from '../lead.ts'
import type { RoomRule, RoomView } from '../rule.ts'
import { number } from '../step-requests.ts'
import type { Notice } from '../types.ts'

const source = '40 CFR 745.80-745.90 (Subpart E), minor repair 745.83; HUD-assisted housing 24 CFR 35.1350(d)'

const leadSafe: RoomRule = {
  id: 'lead-safe',
  level: 'room',
  theme: 'lead',
  title: 'Lead-safe work before 1978',
  found: 'A house built before 1978, or of unknown age, and work that cuts into its paint.',
  reason:
    'Old paint is taken to hold lead until it is tested. Over the published area in a room the federal rule asks for a certified firm, containment, cleaning and records.',
  source,
  safety: 'lead',
  on: true,
  numbers: {
    builtBefore: number(
      1978,
      'year',
      'Houses built before this are taken to hold lead paint',
      '40 CFR 745.83',
    ),
    interiorSquareFeet: number(
      6,
      'sq ft',
      'Most disturbed in one room under the minor-repair exemption',
      '40 CFR 745.83',
    ),
    earlierSquareFeet: number(
      0,
      'sq ft',
      'Already disturbed in each room by jobs of the last 30 days',
      '40 CFR 745.83 (30 days: memory)',
    ),
  },
  notices: (view) => leadNotices(view),
}

/** What the federal rule on lead asks of the work in a room (40 CFR 745, subpart E), by the area disturbed in it. */
export function verdictOf(view: RoomView): LeadVerdict {
  const of = (name: string) => view.book.number('lead-safe', name)
  return leadVerdict(
    {
      yearBuilt: view.job.header.yearBuilt,
      place: 'interior',
      squareFeet: view.disturbedSquareFeet,
      earlierSquareFeet: of('earlierSquareFeet'),
      removedSquareFeet: 0,
      replacesWindow: false,
      demolishes: false,
      prohibitedPractice: false,
    },
    { builtBefore: of('builtBefore'), interiorSquareFeet: of('interiorSquareFeet'), exteriorSquareFeet: 20 },
  )
}

function leadNotices(view: RoomView): readonly Notice[] {
  const verdict = verdictOf(view)
  if (verdict.kind === 'outsideRule' || verdict.squareFeet === 0) return []
  const area = `${verdict.squareFeet.toFixed(1)} sq ft`
  const limit = view.book.number('lead-safe', 'interiorSquareFeet')
  const age =
    view.job.header.yearBuilt === null ? 'The age of the house is not known' : 'The house is from before 1978'
  const sentence =
    verdict.kind === 'covered'
      ? `${age} and the work in ${view.room.name} disturbs about ${area} of painted surface, more than ${limit}: the federal renovation rule applies, and the steps of the room say how.`
      : `${age} and the work in ${view.room.name} disturbs about ${area} of painted surface, not more than ${limit}: the federal rule exempts it as minor repair. Treat the paint as holding lead all the same.`
  return [{ kind: 'leadSafe', roomId: view.room.id, surfaceKeys: [], sentence, source, hold: false }]
}

/** What the rule asks of the whole house, said once as soon as any room has something to say of lead. */
export function leadInHouse(notices: readonly Notice[]): readonly Notice[] {
  if (!notices.some(({ kind }) => kind === 'leadSafe')) return []
  const sentence =
    'Lead: a certified firm with a certified renovator; the pamphlet to the owner, and to whoever lives there, no more than 60 days before the work; signs, rooms sealed and floors covered 6 ft beyond the work; no flame, no power sanding without HEPA, no heat gun at 1,100 °F; cleaning with HEPA and wet, proved by wiping; records kept for three years. Minor repair is exempt only while no window is replaced and no painted surface is demolished. In housing with federal assistance the limit is 2 sq ft to a room. State rules may be stricter and come first.'
  return [{ kind: 'leadSafe', roomId: null, surfaceKeys: [], sentence, source, hold: false }]
}

export const leadRules = [leadSafe] as const

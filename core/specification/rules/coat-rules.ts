import type { ProductClass } from '../../project/vocabulary.ts'
import { type CoatNeed, coatsForColour, glossLevel } from '../coats.ts'
import { commonPractice, type GroupRule, type GroupView } from '../rule.ts'
import { noticeOn, number, primer, wholeStep } from '../step-requests.ts'
import { sheenWords, surfaceNoun } from '../trade-words.ts'

const enamels: readonly ProductClass[] = [
  'waterborneEnamel',
  'alkydEnamel',
  'radiatorEnamel',
  'clearVarnish',
  'floorEnamel',
]

function isEnamel(view: GroupView): boolean {
  return enamels.includes(view.group.finish.productClass)
}

function colourNeed(view: GroupView): CoatNeed {
  const of = (name: string) => view.book.number('colour-change', name)
  return coatsForColour(
    { depth: view.group.depthFound, sheen: view.group.sheenFound },
    { depth: view.group.colour?.depth ?? null, sheen: view.group.finish.sheen },
    {
      renewal: of('renewal'),
      change: of('change'),
      strong: of('strong'),
      strongOverLight: of('strongOverLight'),
      lighterBy: of('lighterBy'),
    },
  )
}

const colourChange: GroupRule = {
  id: 'colour-change',
  level: 'group',
  phase: 'system',
  theme: 'coats',
  title: 'Coats by change of color',
  found: 'What color is there and what it shall become.',
  reason:
    'A change of color needs two coats to hide evenly, white to off-white too; a strong color two, over a much lighter one three.',
  source: commonPractice,
  safety: 'none',
  on: true,
  numbers: {
    renewal: number(1, 'coats', 'Same white or off-white in the same sheen', commonPractice),
    change: number(2, 'coats', 'Any other change', commonPractice),
    strong: number(2, 'coats', 'Deep or strong color over its tinted primer', commonPractice),
    strongOverLight: number(3, 'coats', 'Strong color over one at least two steps lighter', commonPractice),
    lighterBy: number(3, 'steps of depth', 'Lighter by this much goes over a primer', commonPractice),
  },
  when: (view) => view.group.finish.productClass !== 'clearVarnish',
  consequence: (view) => ({ coats: colourNeed(view).coats }),
  order: [],
}

const tintedPrimer: GroupRule = {
  id: 'tinted-primer',
  level: 'group',
  phase: 'system',
  theme: 'coats',
  title: 'Tinted primer under strong colors and over dark ones',
  found: 'A deep or strong color over a lighter one, or a light one over a much darker.',
  reason:
    'A primer tinted toward the new color hides the old one: strong colors cover poorly and dark ones show through.',
  source: 'tint the primer under dark: consumer guide; common practice',
  safety: 'none',
  on: true,
  numbers: {},
  when: (view) => view.group.finish.productClass !== 'clearVarnish' && colourNeed(view).tintedPrimer,
  consequence: () => ({ primers: [primer('hide', 'whole', [], { tinted: true })] }),
  order: [],
}

const enamelCoats: GroupRule = {
  id: 'enamel-coats',
  level: 'group',
  phase: 'system',
  theme: 'coats',
  title: 'Enamel and varnish: two coats',
  found: 'Enamel or varnish on trim, doors, sash, stairs and built work.',
  reason: 'One coat of enamel shows every lap and thin edge: two give an even film.',
  source: 'two top coats over old paint: MIL-HDBK-1110 s. 4.4.1 (one or two); common practice',
  safety: 'none',
  on: true,
  numbers: { coats: number(2, 'coats', 'Coats of enamel', commonPractice) },
  when: isEnamel,
  consequence: (view) => ({ coats: view.book.number('enamel-coats', 'coats') }),
  order: [],
}

export const patchedCoats: GroupRule = {
  id: 'patched-coats',
  level: 'group',
  phase: 'coats',
  theme: 'coats',
  title: 'Patched or primed surfaces: two coats',
  found: 'Anything filled, sealed or primed.',
  reason: 'Over patches and primer a single coat flashes: two give an even sheen.',
  source: 'two coats for patched, dark or unfinished walls: consumer guide; common practice',
  safety: 'none',
  on: true,
  numbers: { coats: number(2, 'coats', 'Coats over patches and primer', commonPractice) },
  when: (view) =>
    view.planned.some((step) =>
      ['fill', 'skim', 'sealChalk', 'sealBare', 'blockStain', 'spotPrime', 'prime', 'sandPatch'].includes(
        step.operation,
      ),
    ),
  consequence: (view) => ({ coats: view.book.number('patched-coats', 'coats') }),
  order: [],
}

/** The owner or the client wants more than the rules count; a number of the finish, not of the rule. */
export const coatsAskedFor: GroupRule = {
  id: 'coats-asked-for',
  level: 'group',
  phase: 'coats',
  theme: 'coats',
  title: 'Coats asked for beyond those counted',
  found: 'A finish with more coats than the rules count.',
  reason: 'One more coat was asked for: a thicker film hides better and wears longer.',
  source: commonPractice,
  safety: 'none',
  on: true,
  numbers: {},
  when: (view) => (view.group.finish.moreCoats ?? 0) > 0,
  consequence: (view) => ({ moreCoats: view.group.finish.moreCoats ?? 0 }),
  order: [],
}

export const scuffBetweenCoats: GroupRule = {
  id: 'scuff-between-coats',
  level: 'group',
  phase: 'follow',
  theme: 'coats',
  title: 'Sand lightly between coats of enamel',
  found: 'Two or more coats of enamel or varnish.',
  reason: 'A light sanding takes off nibs and lets the next coat of enamel hold.',
  source: commonPractice,
  safety: 'dust',
  on: true,
  numbers: {
    share: number(0.3, 'of the full sanding', 'Time of a light sanding against dulling an old gloss'),
  },
  when: isEnamel,
  consequence: (view) => ({
    steps: view.planned
      .filter((step) => step.operation === 'coat' && step.ordinal !== '1')
      .map((step) => wholeStep('sand', { ordinal: step.ordinal })),
  }),
  order: [],
}

/** On board and plaster a sheen of level 3 and over shows every joint: the finish level advised goes up with it. */
export const sheenAdvice: GroupRule = {
  id: 'sheen-advice',
  level: 'group',
  phase: 'found',
  theme: 'coats',
  title: 'Sheen against the finish of the board',
  found: 'Walls or a ceiling of board or plaster, patched, going to eggshell or shinier.',
  reason:
    'The shinier the paint, the more a patch shows: from gloss level 3 (eggshell) up a patched surface wants a skim coat all over.',
  source: 'MPI gloss table page: level 4 before G1 and G2, level 5 before G3 and up; ASTM C840 s. 22.6',
  safety: 'none',
  on: true,
  numbers: {
    fromLevel: number(
      3,
      'gloss level',
      'From this gloss level a level 5 finish is advised',
      'MPI gloss table page',
    ),
  },
  when: (view) =>
    (view.group.surfaceClass === 'walls' || view.group.surfaceClass === 'ceiling') &&
    view.group.findings.some(({ condition }) =>
      ['unsandedPatch', 'poppedFastener', 'bareJointCompound', 'hole'].includes(condition.kind),
    ) &&
    glossLevel(view.group.finish.sheen) >= view.book.number('sheen-advice', 'fromLevel'),
  consequence: (view) => ({
    notices: [
      noticeOn(
        view,
        'advice',
        `Patches on the ${surfaceNoun(view.group.surfaceClass)} of ${view.room.name} go under ${sheenWords[view.group.finish.sheen]} (gloss level ${glossLevel(view.group.finish.sheen)}): from level 3 up a skim coat all over (level 5 finish) is advised, or a flatter paint.`,
        'MPI gloss table page: level 5 before G3 and up; ASTM C840 s. 22.6',
      ),
    ],
  }),
  order: [],
}

export const coatRules = [colourChange, tintedPrimer, enamelCoats] as const

import { composeChanges, isPainted, type Wish } from '../../../../core/agreement/compose.ts'
import { keysOf } from '../../../../core/lists/lists.ts'
import type { JobChange } from '../../../../core/project/agreement-records.ts'
import { type Job, records } from '../../../../core/project/job.ts'
import type { RoomId } from '../../../../core/project/sketch-records.ts'
import type { ColourId } from '../../../../core/project/survey-records.ts'
import {
  type ProductClass,
  type Sheen,
  type SurfaceClass,
  sheens,
  surfaceClasses,
} from '../../../../core/project/vocabulary.ts'
import type { Takeoff } from '../../../../core/quantities/takeoff-types.ts'
import {
  productClassWords,
  sheenWords,
  surfaceClassWords,
} from '../../../../core/specification/trade-words.ts'
import { Choice, optionsOf } from '../../parts/Choice.tsx'
import { finishClasses } from '../../parts/words.ts'

/** What somebody fills in; what does not fit the kind is kept for when it is chosen again. */
interface WishDraft {
  readonly roomId: RoomId | null
  readonly surfaceClass: SurfaceClass | 'all'
  readonly kind: WishKind
  readonly colourId: ColourId | null
  readonly sheen: Sheen
  readonly productClass: ProductClass
}

type WishKind = Wish['kind'] | 'extra'

export const firstWish: WishDraft = {
  roomId: null,
  surfaceClass: 'ceiling',
  kind: 'extra',
  colourId: null,
  sheen: 'satin',
  productClass: 'waterborneEnamel',
}

const kindWords: Readonly<Record<WishKind, string>> = {
  extra: 'An extra: out of the price until it is taken',
  paint: 'Paint what is left as it is now',
  leaveOut: 'Leave it out',
  moreCoats: 'One coat more',
  color: 'Another color',
  sheen: 'Another sheen',
  product: 'Another product',
}

/** The changes a draft stands for, and the name it suggests; no changes where nothing of the kind is there. */
export function wishOf(
  job: Job,
  takeoff: Takeoff,
  draft: WishDraft,
): { readonly name: string; readonly changes: readonly JobChange[] } {
  const present = classesIn(job, takeoff, draft)
  const asked = draft.surfaceClass === 'all' ? present : present.filter((each) => each === draft.surfaceClass)
  const wish = wishIn(draft)
  const what =
    draft.surfaceClass === 'all' ? 'everything' : surfaceClassWords[draft.surfaceClass].toLowerCase()
  const where = draft.roomId === null ? '' : `, ${job.rooms[draft.roomId]?.name ?? ''}`
  return {
    name: `${leadWords(job, draft)} ${what}${where}`,
    changes: wish === null ? [] : composeChanges(job, { roomId: draft.roomId, surfaceClasses: asked }, wish),
  }
}

function leadWords(job: Job, draft: WishDraft): string {
  switch (draft.kind) {
    case 'extra':
    case 'paint':
      return 'Paint'
    case 'leaveOut':
      return 'Leave out'
    case 'moreCoats':
      return 'One coat more on'
    case 'color':
      return `${job.colours[draft.colourId ?? '']?.name ?? 'Another color'} on`
    case 'sheen':
      return `${sheenWords[draft.sheen]} on`
    case 'product':
      return `${productClassWords[draft.productClass]} on`
  }
}

function wishIn(draft: WishDraft): Wish | null {
  switch (draft.kind) {
    case 'extra':
      return { kind: 'leaveOut' }
    case 'moreCoats':
      return { kind: 'moreCoats', coats: 1 }
    case 'color':
      return draft.colourId === null ? null : { kind: 'color', colourId: draft.colourId }
    case 'sheen':
      return { kind: 'sheen', sheen: draft.sheen }
    case 'product':
      return { kind: 'product', productClass: draft.productClass }
    case 'leaveOut':
    case 'paint':
      return { kind: draft.kind }
  }
}

/** Classes that are there and that the wish is about: what is painted, or for painting more, what is not. */
function classesIn(job: Job, { surfaces }: Takeoff, { roomId, kind }: WishDraft): readonly SurfaceClass[] {
  const meant = surfaces.filter(
    (each) =>
      (roomId === null || each.roomId === roomId) && isPainted(job, each.surface) === (kind !== 'paint'),
  )
  return surfaceClasses.filter((surfaceClass) => meant.some((each) => each.surfaceClass === surfaceClass))
}

/** Where, what, and how it shall be otherwise. */
export function WishForm(props: {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly draft: WishDraft
  /** An extra is taken out of the price at once, which makes no sense once a price is agreed. */
  readonly hasExtra: boolean
  readonly onChange: (draft: WishDraft) => void
}) {
  const { job, takeoff, draft } = props
  const change = (next: Partial<WishDraft>) => props.onChange({ ...draft, ...next })
  const kinds = keysOf(kindWords).filter((kind) => props.hasExtra || kind !== 'extra')
  const classes = classesIn(job, takeoff, draft)
  return (
    <div className="field-grid">
      <Choice
        label="What is different"
        options={optionsOf(kinds, kindWords)}
        chosen={draft.kind}
        onChoose={(kind) => change({ kind })}
      />
      <Choice
        label="Where"
        options={[
          { id: 'house', label: 'The whole house' },
          ...records(job.rooms).map(({ id, name }) => ({ id, label: name })),
        ]}
        chosen={draft.roomId ?? 'house'}
        onChoose={(id) => change({ roomId: job.rooms[id]?.id ?? null })}
      />
      <Choice
        label="What"
        options={[{ id: 'all', label: 'Everything there' }, ...optionsOf(classes, surfaceClassWords)]}
        chosen={
          classes.some((each) => each === draft.surfaceClass)
            ? draft.surfaceClass
            : draft.surfaceClass === 'all'
              ? 'all'
              : null
        }
        unchosen="Not there: choose another"
        onChoose={(surfaceClass) => change({ surfaceClass })}
      />
      {draft.kind === 'color' ? (
        <Choice
          label="Color"
          options={records(job.colours).map(({ id, name }) => ({ id, label: name }))}
          chosen={draft.colourId}
          onChoose={(colourId) => change({ colourId })}
        />
      ) : null}
      {draft.kind === 'sheen' ? (
        <Choice
          label="Sheen"
          options={optionsOf(sheens, sheenWords)}
          chosen={draft.sheen}
          onChoose={(sheen) => change({ sheen })}
        />
      ) : null}
      {draft.kind === 'product' ? (
        <Choice
          label="Product"
          options={optionsOf(finishClasses, productClassWords)}
          chosen={draft.productClass}
          onChoose={(productClass) => change({ productClass })}
        />
      ) : null}
    </div>
  )
}

import { Header, ListBox, ListBoxItem, ListBoxSection } from 'react-aria-components'
import type { Job } from '../../../core/project/job.ts'
import { surfaceClasses } from '../../../core/project/vocabulary.ts'
import type { SurfaceQuantity } from '../../../core/quantities/takeoff-types.ts'
import type { WalkPiece } from '../../../core/specification/looked-at.ts'
import { surfaceClassWords } from '../../../core/specification/trade-words.ts'
import { formatArea } from '../../../core/units/area.ts'
import { capital } from '../../../core/words/text.ts'
import { shortLength } from '../../../core/work-order/room-sheet/sheet-words.ts'
import { surfaceWords } from '../../../core/work-order/surface-words.ts'

/** The surfaces of a room by kind; the same picks as in the plan, by keyboard. */
export function SurfaceList(props: {
  readonly job: Job
  readonly surfaces: readonly SurfaceQuantity[]
  readonly pickedKey: string | null
  readonly counts: ReadonlyMap<string, number>
  readonly pieces: readonly WalkPiece[]
  readonly onPick: (surface: SurfaceQuantity) => void
}) {
  const { job, surfaces, pickedKey, counts, pieces, onPick } = props
  const states = new Map(
    pieces.flatMap((piece) => piece.surfaces.map(({ key }) => [key, piece.state] as const)),
  )
  const groups = surfaceClasses
    .map((surfaceClass) => ({
      surfaceClass,
      members: surfaces.filter((each) => each.surfaceClass === surfaceClass),
    }))
    .filter((group) => group.members.length > 0)
  return (
    <ListBox
      aria-label="Surfaces of the room"
      className="surface-list"
      selectionMode="single"
      selectedKeys={pickedKey === null ? [] : [pickedKey]}
      onSelectionChange={(keys) => {
        const [key] = keys === 'all' ? [] : [...keys]
        const surface = surfaces.find((each) => each.key === key)
        if (surface !== undefined) onPick(surface)
      }}
    >
      {groups.map(({ surfaceClass, members }) => (
        <ListBoxSection key={surfaceClass} className="surface-group">
          <Header>{surfaceClassWords[surfaceClass]}</Header>
          {members.map((surface) => (
            <ListBoxItem
              key={surface.key}
              id={surface.key}
              textValue={surfaceWords(job, surface.surface)}
              className="surface-line"
            >
              <span>{capital(surfaceWords(job, surface.surface))}</span>
              <Mark count={counts.get(surface.key) ?? 0} state={states.get(surface.key) ?? 'open'} />
              <span className="number quiet">{sizeOf(job, surface)}</span>
            </ListBoxItem>
          ))}
        </ListBoxSection>
      ))}
    </ListBox>
  )
}

/** How many findings lie on it, or whether anybody looked at the piece it belongs to. */
function Mark({ count, state }: { readonly count: number; readonly state: WalkPiece['state'] }) {
  if (count > 0) return <span className="found-count">{count} found</span>
  if (state === 'open') return <span className="quiet">to look at</span>
  return <span className="sound-mark">{state === 'sound' ? '✓ nothing' : ''}</span>
}

function sizeOf(job: Job, surface: SurfaceQuantity): string {
  const system = job.header.unitSystem
  if (surface.length > 0) return shortLength(surface.length, system)
  return formatArea(surface.netArea, system)
}

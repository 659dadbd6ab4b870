import { Header, ListBox, ListBoxItem, ListBoxSection } from 'react-aria-components'
import type { Job } from '../../../core/project/job.ts'
import { surfaceClasses } from '../../../core/project/vocabulary.ts'
import type { SurfaceQuantity } from '../../../core/quantities/takeoff-types.ts'
import { surfaceClassWords } from '../../../core/specification/trade-words.ts'
import { formatArea } from '../../../core/units/area.ts'
import { formatLength } from '../../../core/units/length.ts'
import { capital } from '../../../core/words/text.ts'
import { surfaceWords } from '../../../core/work-order/surface-words.ts'

/** The surfaces of a room by kind; the same picks as in the plan, by keyboard. */
export function SurfaceList(props: {
  readonly job: Job
  readonly surfaces: readonly SurfaceQuantity[]
  readonly pickedKey: string | null
  readonly counts: ReadonlyMap<string, number>
  readonly onPick: (surface: SurfaceQuantity) => void
}) {
  const { job, surfaces, pickedKey, counts, onPick } = props
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
              <FoundCount count={counts.get(surface.key) ?? 0} />
              <span className="number quiet">{sizeOf(job, surface)}</span>
            </ListBoxItem>
          ))}
        </ListBoxSection>
      ))}
    </ListBox>
  )
}

function FoundCount({ count }: { readonly count: number }) {
  return count === 0 ? <span /> : <span className="found-count">{count} found</span>
}

function sizeOf(job: Job, surface: SurfaceQuantity): string {
  const system = job.header.unitSystem
  if (surface.length > 0) return formatLength(surface.length, system)
  return formatArea(surface.netArea, system)
}

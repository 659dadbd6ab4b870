import { Button } from 'react-aria-components'
import type { Job } from '../../../core/project/job.ts'
import type { Room } from '../../../core/project/sketch-records.ts'
import type { Condition } from '../../../core/project/survey-records.ts'
import type { ConditionKind } from '../../../core/project/vocabulary.ts'
import type { SurfaceQuantity } from '../../../core/quantities/takeoff-types.ts'
import { pieceKey, type WalkPiece } from '../../../core/specification/looked-at.ts'
import { conditionWords } from '../../../core/specification/trade-words.ts'
import { usualFindings } from '../../../core/specification/usual-findings.ts'
import { useSiteNow } from '../../state/planner-now.ts'
import type { Chain } from '../parts/chain.ts'
import { putRecord } from '../parts/edits.ts'
import {
  ConditionForm,
  ConditionWhatIf,
  FormButtons,
  useConsequences,
  useFindingDraft,
} from '../parts/found/ConditionPaper.tsx'
import { newCondition } from '../parts/found/condition-records.ts'
import { FindingSearch } from '../parts/found/FindingSearch.tsx'
import { FoundHere } from './FoundHere.tsx'
import { UsualFindings } from './UsualFindings.tsx'
import { setSound, soundAndNext } from './walk-actions.ts'

interface WrongPaperProps {
  readonly job: Job
  readonly room: Room
  readonly surface: SurfaceQuantity
  readonly pieces: readonly WalkPiece[]
  readonly draft: Condition | null
  readonly onDraft: (draft: Condition | null) => void
}

/** What is wrong with the picked surface: the usual by one tap, the rest by search, or that nothing is. */
export function WrongPaper({ job, room, surface, pieces, draft, onDraft }: WrongPaperProps) {
  const { today } = useSiteNow()
  useFindingDraft(job, draft)
  if (draft !== null) {
    return <DraftPaper job={job} surface={surface} draft={draft} onDraft={onDraft} />
  }
  const usual = usualFindings(job.header.yearBuilt, surface.surfaceClass)
  const start = (kind: ConditionKind) =>
    onDraft({ ...newCondition(surface, today.slice(0, 10) || null), kind })
  return (
    <section className="block" aria-label="What is wrong">
      <FoundHere job={job} surface={surface} onChange={onDraft} />
      <UsualFindings job={job} surface={surface} />
      <div className="wrong-rest">
        <FindingSearch key={surface.key} without={usual.map(({ kind }) => kind)} onPick={start} />
        <SoundButton room={room} surface={surface} pieces={pieces} />
      </div>
      <p className="quiet">
        The six are common practice for such a surface in a house of this age; their amounts are the shop's
        assumption until you change them. A second tap adds as much again.
      </p>
    </section>
  )
}

function SoundButton({ room, surface, pieces }: Pick<WrongPaperProps, 'room' | 'surface' | 'pieces'>) {
  const key = pieceKey(surface.surface)
  const isLast = pieces.every((piece) => piece.state !== 'open')
  const state = pieces.find((piece) => piece.key === key)?.state
  if (state === 'sound') {
    return (
      <Button className="plain-button" onPress={() => setSound(room, [key], false)}>
        ✓ Nothing wrong; look again
      </Button>
    )
  }
  return (
    <Button className={isLast ? 'plain-button' : 'act-button'} onPress={soundAndNext}>
      {state === 'found' ? 'Go on' : 'Nothing wrong, go on'} <span className="key-hint">S</span>
    </Button>
  )
}

function DraftPaper(props: {
  readonly job: Job
  readonly surface: SurfaceQuantity
  readonly draft: Condition
  readonly onDraft: (draft: Condition | null) => void
}) {
  const { job, surface, draft, onDraft } = props
  const isNew = job.conditions[draft.id] === undefined
  return (
    <section className="block" aria-label={isNew ? 'New finding' : 'Finding'}>
      <h3>{isNew ? 'What was found' : 'Change what was found'}</h3>
      <ConditionForm job={job} surface={surface} draft={draft} isNew={isNew} onChange={onDraft} />
      <FormButtons
        isNew={isNew}
        onAccept={() => {
          const action = `${isNew ? 'Record' : 'Change'}: ${conditionWords[draft.kind]}`
          if (putRecord(action, 'conditions', draft)) onDraft(null)
        }}
        onCancel={() => onDraft(null)}
      />
    </section>
  )
}

/** What would follow from a finding that is being written, beside its form. */
export function DraftConsequences({ chain, draft }: { readonly chain: Chain; readonly draft: Condition }) {
  const { before, after } = useConsequences(chain, draft)
  return (
    <section className="block scroll" aria-label="If this is recorded" aria-live="polite">
      <h3>If this is recorded</h3>
      <ConditionWhatIf before={before} after={after} />
    </section>
  )
}

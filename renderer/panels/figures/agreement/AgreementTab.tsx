import { useState } from 'react'
import type { Estimate } from '../../../../core/price/estimate-types.ts'
import type { Job } from '../../../../core/project/job.ts'
import type { Takeoff } from '../../../../core/quantities/takeoff-types.ts'
import type { Specification } from '../../../../core/specification/types.ts'
import { useSiteNow } from '../../../state/planner-now.ts'
import { useAgreement } from '../../parts/dealings/use-agreement.ts'
import { AnswerForm, LostForm } from './AnswerForms.tsx'
import { ChangeForm, OpenChanges } from './ChangeForms.tsx'
import { CreditForm } from './CreditForm.tsx'
import { InvoiceForm, PaymentForm, StageButtons } from './MoneyForms.tsx'
import { QuoteForm } from './QuoteForm.tsx'
import { Entries, Standing } from './Standing.tsx'

interface AgreementParts {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly specification: Specification
  readonly estimate: Estimate
}

/** From the quote to the last payment: what was agreed, asked for and paid, and what can be done next. */
export function AgreementTab(props: AgreementParts) {
  const agreement = useAgreement()
  const { today } = useSiteNow()
  const [isChanging, setChanging] = useState(false)
  const { stage } = agreement
  const isAgreed = agreement.accepted !== null && stage !== 'quoted' && stage !== 'lost'
  const own = { ...props, agreement, at: today }
  return (
    <div className="two-panes">
      <div className="pane pane-wide scroll">
        <Standing {...own} onChangeOrder={() => setChanging(true)} />
        <Entries {...own} />
      </div>
      <aside className="pane pane-side scroll" aria-label="What can be done next">
        {isAgreed ? (
          <>
            <OpenChanges {...own} />
            {isChanging ? <ChangeForm {...own} isOpen onOpen={setChanging} /> : null}
            <InvoiceForm {...own} />
            <PaymentForm {...own} />
            <CreditForm {...own} />
            {isChanging ? null : <ChangeForm {...own} isOpen={false} onOpen={setChanging} />}
            <StageButtons {...own} />
          </>
        ) : (
          <>
            {stage === 'quoted' ? <AnswerForm {...own} /> : null}
            <QuoteForm {...own} />
            {stage === 'quoted' ? <LostForm {...own} /> : null}
          </>
        )}
      </aside>
    </div>
  )
}

import { Button } from 'react-aria-components'
import type { Giving } from './giving.ts'
import type { PageCount } from './page-count.ts'
import { countWords } from './page-count.ts'

/** How much paper it is, and what can be done with it; stays in sight while the choice above is longer than the window. */
export function GivingButtons({
  giving,
  count,
}: {
  readonly giving: Giving
  readonly count: PageCount | null
}) {
  const isDisabled = giving.delivered?.kind === 'underWay' || count?.pages === 0
  return (
    <div className="paper-go">
      <p role="status">{countWords(count)}</p>
      <div className="button-row">
        <Button className="act-button" onPress={giving.print} isDisabled={isDisabled}>
          Print
        </Button>
        {giving.writesPdf ? (
          <Button className="plain-button" onPress={giving.save} isDisabled={isDisabled}>
            Save as PDF
          </Button>
        ) : null}
      </div>
    </div>
  )
}

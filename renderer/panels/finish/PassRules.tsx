import type { HouseRules } from '../../../core/project/job.ts'
import { Choice } from '../parts/Choice.tsx'
import { EntryField } from '../parts/EntryField.tsx'
import { changeHouseRules } from '../parts/edits.ts'
import { decimalNumber } from '../parts/entries.ts'

/** How steps are gathered into what is done in one go; the passes of each room are planned, printed and ticked. */
export function PassRules({ passes }: { readonly passes: HouseRules['passes'] }) {
  const change = (label: string, part: Partial<HouseRules['passes']>) =>
    changeHouseRules(label, { passes: { ...passes, ...part } })
  return (
    <>
      <Choice
        label="Prime"
        options={[
          { id: 'together', label: 'Woodwork, patches and walls in one go' },
          { id: 'apart', label: 'Woodwork apart from ceiling and walls' },
        ]}
        chosen={passes.primed}
        onChoose={(primed) => change('Change what is primed together', { primed })}
      />
      <Choice
        label="Repair"
        options={[
          { id: 'together', label: 'All of a room in one go' },
          { id: 'apart', label: 'Ceiling, walls and woodwork each by itself' },
        ]}
        chosen={passes.repairs}
        onChoose={(repairs) => change('Change how fine repairs are parted', { repairs })}
      />
      <EntryField
        label="Largest pass (person-hours)"
        shown={String(passes.largestHours)}
        read={decimalNumber(1, 24)}
        onCommit={(largestHours) => change('Change how large a pass may be', { largestHours })}
      />
    </>
  )
}

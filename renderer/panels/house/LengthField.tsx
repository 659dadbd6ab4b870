import { formatLength, formatSmallLength, type Length } from '../../../core/units/length.ts'
import { parseLength } from '../../../core/units/parse-length.ts'
import { useJob } from '../../state/app.ts'
import { EntryField } from '../parts/EntryField.tsx'

/** A length typed as painters write it. Small ones (casings, members) are bare inches or millimetres, others bare feet or metres. */
export function LengthField(props: {
  readonly label: string
  readonly length: Length
  readonly onCommit: (length: Length) => void
  readonly isSmall?: boolean
}) {
  const system = useJob().header.unitSystem
  const bareUnit = props.isSmall ? (system === 'imperial' ? 'in' : 'mm') : undefined
  return (
    <EntryField
      label={props.label}
      shown={props.isSmall ? formatSmallLength(props.length, system) : formatLength(props.length, system)}
      read={(text) => {
        const read = parseLength(text, system, bareUnit)
        return read.ok ? { ok: true, value: read.length } : read
      }}
      onCommit={props.onCommit}
      width="short"
    />
  )
}

import { formatLength, formatSmallLength, type Length } from '../../../core/units/length.ts'
import { parseLength } from '../../../core/units/parse-length.ts'
import { useJob } from '../../state/app.ts'
import { EntryField } from '../parts/EntryField.tsx'

export interface LengthFieldProps {
  readonly label: string
  /** Null leaves the field empty. */
  readonly length: Length | null
  readonly onCommit: (length: Length) => unknown
  readonly isSmall?: boolean
  readonly hint?: string
}

/** A length typed as painters write it. Small ones (casings, members) are bare inches or millimetres, others bare feet or metres. */
export function LengthField({ label, length, onCommit, isSmall, ...hint }: LengthFieldProps) {
  const system = useJob().header.unitSystem
  const bareUnit = isSmall ? (system === 'imperial' ? 'in' : 'mm') : undefined
  const format = isSmall ? formatSmallLength : formatLength
  return (
    <EntryField
      label={label}
      shown={length === null ? '' : format(length, system)}
      {...hint}
      read={(text) => {
        const read = parseLength(text, system, bareUnit)
        return read.ok ? { ok: true, value: read.length } : read
      }}
      onCommit={onCommit}
      width="short"
    />
  )
}

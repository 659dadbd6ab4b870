import { formatLength, formatSmallLength, type Length } from '../../../../core/units/length.ts'
import { parseLength } from '../../../../core/units/parse-length.ts'
import { useJob } from '../../../state/app.ts'
import { EntryField } from '../../parts/EntryField.tsx'
import { differs } from './common.ts'

/** A length of several things; empty where they have not all the same. */
export function ManyLength(props: {
  readonly label: string
  readonly length: Length | null
  readonly onCommit: (length: Length) => unknown
  readonly isSmall?: boolean
}) {
  const { label, length, onCommit, isSmall = false } = props
  const system = useJob().header.unitSystem
  const bareUnit = isSmall ? (system === 'imperial' ? 'in' : 'mm') : undefined
  const format = isSmall ? formatSmallLength : formatLength
  return (
    <EntryField
      label={label}
      shown={length === null ? '' : format(length, system)}
      {...(length === null ? { hint: differs } : {})}
      read={(text) => {
        const read = parseLength(text, system, bareUnit)
        return read.ok ? { ok: true, value: read.length } : read
      }}
      onCommit={onCommit}
      width="short"
    />
  )
}

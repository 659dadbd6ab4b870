import type { Condition } from '../../../../core/project/survey-records.ts'
import { type Area, squareMetres } from '../../../../core/units/area.ts'
import type { Length } from '../../../../core/units/length.ts'
import { useJob } from '../../../state/app.ts'
import { EntryField } from '../EntryField.tsx'
import {
  areaEntry,
  areaText,
  lengthEntry,
  lengthText,
  orNothing,
  type ReadEntry,
  wholeNumber,
} from '../entries.ts'
import { grainsPerSquareMillimetre } from './condition-records.ts'

type Amounts = Pick<Condition, 'length' | 'areaMm2' | 'count'>

interface AmountFieldProps {
  readonly label: string
  readonly amounts: Amounts
  /** Answers `false` where it was refused. */
  readonly onChange: (change: Partial<Amounts>) => unknown
  /** An amount that is there, to be changed in a line and never emptied. */
  readonly isInLine?: boolean
}

function reading<Value>(isInLine: boolean, read: ReadEntry<Value>): ReadEntry<Value | null> {
  return isInLine ? read : orNothing(read)
}

function looks(isInLine: boolean) {
  return isInLine ? ({ isBare: true } as const) : ({ width: 'short' } as const)
}

export function LengthOfFinding({ label, amounts, onChange, isInLine = false }: AmountFieldProps) {
  const system = useJob().header.unitSystem
  return (
    <EntryField<Length | null>
      label={label}
      {...looks(isInLine)}
      shown={lengthText(amounts.length, system)}
      read={reading(isInLine, lengthEntry(system))}
      onCommit={(length) => onChange({ length })}
    />
  )
}

export function AreaOfFinding({ label, amounts, onChange, isInLine = false }: AmountFieldProps) {
  const system = useJob().header.unitSystem
  return (
    <EntryField<Area | null>
      label={label}
      {...looks(isInLine)}
      shown={amounts.areaMm2 === null ? '' : areaText(squareMetres(amounts.areaMm2 / 1e6), system)}
      read={reading(isInLine, areaEntry(system))}
      onCommit={(area) => onChange({ areaMm2: area === null ? null : area / grainsPerSquareMillimetre })}
    />
  )
}

export function CountOfFinding({ label, amounts, onChange, isInLine = false }: AmountFieldProps) {
  return (
    <EntryField<number | null>
      label={label}
      {...looks(isInLine)}
      {...(isInLine ? { unit: '×' } : {})}
      shown={amounts.count === null ? '' : String(amounts.count)}
      read={reading(isInLine, wholeNumber(isInLine ? 1 : 0, 10_000))}
      onCommit={(count) => onChange({ count })}
    />
  )
}

/** How much was found, in every way it may be measured; what is left empty is taken by how bad it is. */
export function AmountFields(props: {
  readonly amounts: Amounts
  readonly onChange: (change: Partial<Amounts>) => unknown
  /** Said behind each label: ` in each`. */
  readonly where?: string
}) {
  const { amounts, onChange, where = '' } = props
  return (
    <>
      <LengthOfFinding label={`Length${where}`} amounts={amounts} onChange={onChange} />
      <AreaOfFinding label={`Area${where}`} amounts={amounts} onChange={onChange} />
      <CountOfFinding label={`How many${where}`} amounts={amounts} onChange={onChange} />
    </>
  )
}

import { useRef, useState } from 'react'
import { FieldError, Input, Label, Text, TextArea, TextField } from 'react-aria-components'
import { useDraft } from '../../state/drafts.ts'
import type { ReadEntry } from './entries.ts'

interface EntryFieldProps<Value> {
  readonly label: string
  /** What stands there now, as it is shown. */
  readonly shown: string
  readonly read: ReadEntry<Value>
  /** Takes the value; `false` where it was refused, and then what was typed stays in the field. */
  readonly onCommit: (value: Value) => unknown
  readonly kind?: 'text' | 'date' | 'time' | 'datetime-local' | 'color'
  readonly hint?: string
  /** Shown behind the field, a unit for instance. */
  readonly unit?: string
  readonly isDisabled?: boolean
  readonly lines?: number
  /** Begins with the keyboard in it and its text selected, and lets go of the keyboard on Enter. */
  readonly isFocused?: boolean
  /** Leaves the label to readers of the screen only, where a column head says it. */
  readonly isBare?: boolean
  readonly width?: 'short' | 'middle' | 'wide'
}

function leave(target: EventTarget): void {
  if (target instanceof HTMLElement) target.blur()
}

const notTaken = 'This was not entered. Esc puts back what was here.'

/** A field that keeps what is typed to itself until Enter or until it is left; Escape puts back what stood there. */
export function EntryField<Value>(props: EntryFieldProps<Value>) {
  const { label, shown, read, onCommit, kind = 'text', hint, unit, isDisabled = false, lines, isBare } = props
  const [draft, setDraft] = useState<string | null>(null)
  const [isRefused, setRefused] = useState(false)
  // Enter takes what is typed and leaves the field, which would take the same once more before it is drawn anew.
  const taken = useRef<string | null>(null)
  const entry = draft === null ? null : read(draft)
  const sentence = entry !== null && !entry.ok ? entry.sentence : isRefused ? notTaken : null
  const isPending = draft !== null && draft !== shown
  const release = useDraft(isPending ? { label, text: draft, take: commit } : null)

  /** True when nothing is left to take. */
  function commit(): boolean {
    if (draft === null || taken.current === draft) return true
    const found = read(draft)
    if (!found.ok) return false
    if (draft !== shown && onCommit(found.value) === false) {
      setRefused(true)
      return false
    }
    giveUp()
    taken.current = draft
    return true
  }

  function giveUp() {
    setDraft(null)
    setRefused(false)
    release()
  }

  function change(text: string) {
    taken.current = null
    setDraft(text)
    setRefused(false)
  }

  return (
    <TextField
      className={`entry entry-${props.width ?? 'middle'}`}
      value={draft ?? shown}
      onChange={change}
      isInvalid={sentence !== null}
      isDisabled={isDisabled}
      {...(isBare ? { 'aria-label': label } : {})}
      onBlur={commit}
      onKeyDown={(event) => {
        if (event.key === 'Enter' && lines === undefined && commit() && props.isFocused) leave(event.target)
        if (event.key === 'Escape' && draft !== null) giveUp()
        else event.continuePropagation()
      }}
    >
      {isBare ? null : <Label>{label}</Label>}
      <span className="entry-line">
        {lines === undefined ? (
          <Input
            type={kind}
            step={kind === 'time' ? 300 : undefined}
            autoFocus={props.isFocused ?? false}
            onFocus={(event) => props.isFocused && event.currentTarget.select()}
          />
        ) : (
          <TextArea rows={lines} />
        )}
        {unit === undefined ? null : <span className="entry-unit">{unit}</span>}
      </span>
      {hint === undefined ? null : (
        <Text slot="description" className="entry-hint">
          {hint}
        </Text>
      )}
      <FieldError>{sentence}</FieldError>
    </TextField>
  )
}

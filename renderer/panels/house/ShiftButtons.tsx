import { Button } from 'react-aria-components'

const ways = [
  { label: 'left', x: -1, y: 0 },
  { label: 'right', x: 1, y: 0 },
  { label: 'up', x: 0, y: -1 },
  { label: 'down', x: 0, y: 1 },
] as const

/** Moves something on the plan by one step, whichever way the plan lies. */
export function ShiftButtons(props: {
  readonly what: string
  readonly onShift: (x: number, y: number) => void
}) {
  return ways.map(({ label, x, y }) => (
    <Button
      key={label}
      className="plain-button small"
      aria-label={`Move ${props.what} ${label}`}
      onPress={() => props.onShift(x, y)}
    >
      {label}
    </Button>
  ))
}

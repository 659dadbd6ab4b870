import { Button, type ButtonProps } from 'react-aria-components'

interface HintButtonProps extends ButtonProps {
  /** Shown while the pointer rests on the button; nothing where there is nothing to add. */
  readonly hint: string | undefined
}

/** A button of react-aria-components, which drops the browser's own hint (`title`); this one keeps it. */
export function HintButton({ hint, ...props }: HintButtonProps) {
  return <Button {...props} render={(own) => <button {...own} title={hint} />} />
}

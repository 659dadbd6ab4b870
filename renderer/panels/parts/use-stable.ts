import { useCallback, useLayoutEffect, useRef } from 'react'

/** One function for as long as the part is shown, which does what it was given last: a row that it is given to need not be drawn again. */
export function useStable<Asked extends readonly unknown[]>(
  act: (...asked: Asked) => void,
): (...asked: Asked) => void {
  const latest = useRef(act)
  useLayoutEffect(() => {
    latest.current = act
  })
  return useCallback((...asked) => latest.current(...asked), [])
}

import { useMemo } from 'react'
import { usePasses } from '../../state/derived.ts'

/** Names a step by the pass it is in, which may be of another set than the one looked at. */
export function usePassNames(): (stepKey: string) => string {
  const passes = usePasses()
  const passOfStep = useMemo(
    () => new Map(passes.passes.flatMap(({ name, stepKeys }) => stepKeys.map((key) => [key, name]))),
    [passes],
  )
  return (stepKey) => {
    const name = passOfStep.get(stepKey)
    return name === undefined ? 'an earlier step' : `“${name}”`
  }
}

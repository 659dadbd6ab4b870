import { useRef } from 'react'
import { sameValue } from '../../../core/project/same-value.ts'

/** The value of before while it says the same, so that lists are not put together again for another object of the same words. */
export function useSame<Value>(value: Value): Value {
  const last = useRef(value)
  if (!sameValue(last.current, value)) last.current = value
  return last.current
}

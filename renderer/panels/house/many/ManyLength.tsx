import { LengthField, type LengthFieldProps } from '../LengthField.tsx'
import { differs } from './common.ts'

/** A length of several things; empty where they have not all the same. */
export function ManyLength(props: Omit<LengthFieldProps, 'hint'>) {
  return <LengthField {...props} {...(props.length === null ? { hint: differs } : {})} />
}

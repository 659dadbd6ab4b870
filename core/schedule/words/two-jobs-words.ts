import { spanWords } from '../../time/date-words.ts'
import { momentOf } from '../../time/site-moment.ts'
import type { LengthUnitSystem } from '../../units/length.ts'

interface AtTwoJobs {
  readonly name: string
  readonly titles: readonly [string, string]
  /** Instants, by time; one at least. */
  readonly stretches: readonly { readonly from: number; readonly to: number }[]
}

/** `Ada is at “Elm Street” and at “Oak Lane” at once: Mon Mar 29, 8:00 am to 10:15 am, and 2 more times.` */
export function twoJobsSentence(
  { name, titles: [one, other], stretches }: AtTwoJobs,
  timeZone: string,
  system: LengthUnitSystem,
): string {
  const [first] = stretches
  if (first === undefined) return ''
  const span = spanWords(momentOf(first.from, timeZone), momentOf(first.to, timeZone), system)
  const more = stretches.length - 1
  const rest = more === 0 ? '' : `, and ${more} more ${more === 1 ? 'time' : 'times'}`
  return `${name} is at “${one}” and at “${other}” at once: ${span}${rest}.`
}

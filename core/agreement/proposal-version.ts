import type { DealingOf } from '../project/agreement-records.ts'
import { type Issued, type IssuedId, isPaper, issuedIdSchema } from '../project/issued-records.ts'
import { type Job, records } from '../project/job.ts'
import { fingerprint } from '../words/fingerprint.ts'

/** What a proposal offers and a quote freezes. */
export type Offer = Pick<DealingOf<'quoted'>, 'lines' | 'options' | 'steps'>

/** Two offers have one mark where they ask the same money for the same things. */
export function offerMark({ lines, options, steps }: Offer): string {
  const said = [
    lines.map((line) => [line.label, line.beforeTaxCents, line.taxCents]),
    options.map((option) => [option.id, option.name, option.oneOf, option.beforeTaxCents, option.taxCents]),
    steps.map((step) => [step.name, step.percent]),
  ]
  return fingerprint(JSON.stringify(said))
}

/** A proposal that was given out is kept under an id that says its version and its offer. */
export function proposalPaperId(version: number, mark: string): IssuedId {
  return issuedIdSchema.parse(`proposal-${version}-${mark}`)
}

interface Version {
  readonly version: number
  /** Of the offer; null where a paper does not say it, being kept before papers did. */
  readonly mark: string | null
}

/** The version of a proposal that was given out; those kept before it was part of their id are counted. */
export function versionOfPaper(issued: readonly Issued[], paperId: IssuedId): number {
  return printedVersions(issued).find(({ id }) => id === paperId)?.version ?? 1
}

function printedVersions(issued: readonly Issued[]): readonly (Version & { readonly id: IssuedId })[] {
  return issued
    .filter((each) => isPaper(each) && each.kind === 'estimate')
    .map(({ id }, index) => {
      const [, version, mark] = /^proposal-(\d+)-([0-9a-f]{16})$/.exec(id) ?? []
      return { id, version: version === undefined ? index + 1 : Number(version), mark: mark ?? null }
    })
}

/**
 * The version under which an offer is printed (`as: 'paper'`) or written down as a quote (`as: 'quote'`) next. Both are one count: what was
 * given out one way keeps its version when it is given out the other way, as long as it offers the same; everything else is one more.
 */
export function nextVersion(
  job: Pick<Job, 'issued' | 'dealings'>,
  mark: string,
  as: 'paper' | 'quote',
): number {
  const printed = printedVersions(records(job.issued))
  const quoted = records(job.dealings)
    .filter((dealing) => dealing.kind === 'quoted')
    .map((quote): Version => ({ version: quote.number, mark: offerMark(quote) }))
  const last = Math.max(0, ...[...printed, ...quoted].map(({ version }) => version))
  const [own, other] = as === 'paper' ? [printed, quoted] : [quoted, printed]
  const isTaken = own.some(({ version }) => version === last)
  const isSame = other.some((each) => each.version === last && each.mark === mark)
  return !isTaken && isSame ? last : last + 1
}

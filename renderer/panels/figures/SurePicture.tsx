import type { Sureness } from '../../../core/agreement/how-sure/sureness.ts'
import { formatCents } from '../../../core/units/money.ts'

const width = 312
const bottom = 112
const top = 30

/** How often prices fall where; the price as it stands and the one that holds four times in five are lines in it. */
export function SurePicture({ sure }: { readonly sure: Sureness }) {
  const { bars, pricedCents, heldCents } = sure
  const least = Math.min(bars[0]?.fromCents ?? 0, pricedCents)
  const most = Math.max(bars.at(-1)?.toCents ?? 0, pricedCents, least + 1)
  const place = (cents: number) => 4 + ((width - 8) * (cents - least)) / (most - least)
  const tallest = Math.max(...bars.map(({ share }) => share))
  return (
    <svg
      className="sure-picture"
      viewBox={`0 0 ${width} ${bottom + 18}`}
      role="img"
      aria-label={`Prices before tax that would have been enough: ${formatCents(Math.round(least))} to ${formatCents(Math.round(most))}; priced at ${formatCents(pricedCents)}; ${formatCents(heldCents)} holds four times in five`}
    >
      {bars.map(({ fromCents, toCents, share }) => {
        const height = ((bottom - top) * share) / tallest
        return (
          <rect
            key={fromCents}
            className={(fromCents + toCents) / 2 <= pricedCents ? 'sure-enough' : 'sure-short'}
            x={place(fromCents)}
            y={bottom - height}
            width={Math.max(1, place(toCents) - place(fromCents) - 1)}
            height={height}
          />
        )
      })}
      <line className="sure-floor" x1={0} x2={width} y1={bottom} y2={bottom} />
      <Marker at={place(pricedCents)} high={9} word="priced" isLeft={pricedCents <= heldCents} />
      <Marker at={place(heldCents)} high={22} word="four in five" isLeft={heldCents < pricedCents} isDashed />
      <text x={4} y={bottom + 13}>
        {dollars(least)}
      </text>
      <text x={width - 4} y={bottom + 13} textAnchor="end">
        {dollars(most)}
      </text>
    </svg>
  )
}

function Marker(props: {
  readonly at: number
  readonly high: number
  readonly word: string
  readonly isLeft: boolean
  readonly isDashed?: boolean
}) {
  const { at, high, word, isLeft, isDashed } = props
  return (
    <>
      <line
        className={isDashed ? 'sure-line sure-dashed' : 'sure-line'}
        x1={at}
        x2={at}
        y1={high - 7}
        y2={bottom}
      />
      <text x={at + (isLeft ? -4 : 4)} y={high + 1} textAnchor={isLeft ? 'end' : 'start'}>
        {word}
      </text>
    </>
  )
}

/** Whole dollars: nobody reads cents off a picture. */
function dollars(cents: number): string {
  return formatCents(Math.round(cents / 100) * 100).slice(0, -3)
}

import type { ReactNode } from 'react'
import { PromisedBack } from './LaneDrawing.tsx'

/** What the signs of the drawing mean. */
export function Legend(props: {
  readonly isPicked: boolean
  readonly showsMoved: boolean
  /** Some room was promised back by a day. */
  readonly hasPromises: boolean
}) {
  return (
    <div className="plan-legend">
      {props.isPicked ? (
        <>
          <Sign text="picked">
            <rect width="20" height="12" className="plan-sign-picked" />
          </Sign>
          <Sign text="it waits for">
            <rect width="20" height="12" className="plan-sign-work" />
            <rect x="14" width="6" height="12" className="plan-edge-before" />
          </Sign>
          <Sign text="it holds up">
            <rect width="20" height="12" className="plan-sign-work" />
            <rect width="6" height="12" className="plan-edge-after" />
          </Sign>
        </>
      ) : (
        <>
          <Sign text="dry work">
            <rect width="20" height="12" className="plan-sign-work" />
          </Sign>
          <Sign text="wet work">
            <rect width="20" height="12" className="plan-sign-wet" />
          </Sign>
        </>
      )}
      <Sign text="drying">
        <rect width="20" height="12" className="plan-drying" />
      </Sign>
      <Sign text="room out of use">
        <rect y="4" width="20" height="4" className="plan-out-of-use" />
      </Sign>
      {props.hasPromises ? (
        <Sign text="promised back">
          <PromisedBack at={5} height={12} />
        </Sign>
      ) : null}
      <Sign text="night, day off">
        <rect width="20" height="12" className="plan-sign-night" />
      </Sign>
      <Sign text="break, not there">
        <rect width="20" height="12" className="plan-sign-absent" />
      </Sign>
      <Sign text="pinned">
        <circle cx="10" cy="6" r="4" className="plan-pin" />
      </Sign>
      {props.showsMoved ? (
        <Sign text="moved">
          <rect x="1" y="1" width="18" height="10" className="plan-sign-moved" />
        </Sign>
      ) : null}
    </div>
  )
}

function Sign({ text, children }: { readonly text: string; readonly children: ReactNode }) {
  return (
    <span>
      <svg width="20" height="12" aria-hidden="true">
        {children}
      </svg>
      {text}
    </span>
  )
}

import { Component, type ErrorInfo, type ReactNode } from 'react'
import { Button } from 'react-aria-components'
import type { Job } from '../../core/project/job.ts'
import { jobStore, useJobState } from '../state/app.ts'
import { copyText } from './copy-text.ts'
import { saveCopy } from './job-book.ts'

/** What brought a part of the window down. */
interface Fall {
  readonly error: unknown
  /** Where in the window, as React says it. */
  readonly where: string
}

interface GuardState {
  readonly fall: Fall | null
  /** The details are open, and stay so when it fails once more. */
  readonly isOpen: boolean
}

interface GuardProps {
  /** What is guarded, as it stands in the sentence: `The Calendar station`. */
  readonly part: string
  /** Another job value is tried anew. */
  readonly job: Job | null
  /** Along an edge of the window, where one line has to do. */
  readonly isNarrow?: boolean
  readonly children: ReactNode
}

/** A part of the window that may fail without taking the rest along. The job lies outside of it and is not touched. */
export class Guard extends Component<GuardProps, GuardState> {
  override state: GuardState = { fall: null, isOpen: false }

  static getDerivedStateFromError(error: unknown): Pick<GuardState, 'fall'> {
    return { fall: { error, where: '' } }
  }

  override componentDidCatch(error: unknown, { componentStack }: ErrorInfo): void {
    this.setState({ fall: { error, where: componentStack ?? '' } })
  }

  override componentDidUpdate(before: GuardProps): void {
    if (this.state.fall !== null && before.job !== this.props.job) this.setState({ fall: null })
  }

  override render(): ReactNode {
    const { fall, isOpen } = this.state
    const { part, isNarrow = false, children } = this.props
    if (fall === null) return children
    return (
      <Fallen
        part={part}
        fall={fall}
        isNarrow={isNarrow}
        isOpen={isOpen}
        onAgain={() => this.setState({ fall: null })}
        onOpen={(open) => this.setState({ isOpen: open })}
      />
    )
  }
}

function Fallen(props: {
  readonly part: string
  readonly fall: Fall
  readonly isNarrow: boolean
  readonly isOpen: boolean
  readonly onAgain: () => void
  /** The details were opened or closed. */
  readonly onOpen: (isOpen: boolean) => void
}) {
  const { part, fall, isNarrow } = props
  const last = useJobState((state) => state.past.at(-1)?.name ?? null)
  const detail = detailOf(fall)
  return (
    <section
      className={isNarrow ? 'fallen fallen-narrow' : 'fallen'}
      aria-label={`${part} failed`}
      role="alert"
    >
      <h2>{part} could not be shown</h2>
      <p>
        {isNarrow ? null : (
          <>
            Something in this job, or a mistake in the program, stopped it.{' '}
            <strong>Your work is safe: nothing is lost by this.</strong> Try it again, go on at another
            station, or undo the last thing you did.
          </>
        )}
      </p>
      <div className="button-row">
        <Button className="act-button" onPress={props.onAgain}>
          Try again
        </Button>
        {last === null ? null : (
          <Button className="plain-button" onPress={jobStore.undo}>
            Undo: {last}
          </Button>
        )}
        <Button className="plain-button" onPress={() => copyText(detail)}>
          Copy the details
        </Button>
        <Button className="plain-button" onPress={() => void saveCopy()}>
          Save a copy of the job as a file
        </Button>
      </div>
      <details open={props.isOpen} onToggle={({ currentTarget }) => props.onOpen(currentTarget.open)}>
        <summary>Details for a report</summary>
        <pre className="detail-text">{detail}</pre>
      </details>
    </section>
  )
}

function detailOf({ error, where }: Fall): string {
  const said =
    error instanceof Error ? `${error.name}: ${error.message}\n${error.stack ?? ''}` : String(error)
  return `${said}\n${where}`.trim()
}

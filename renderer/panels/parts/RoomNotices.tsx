import type { Notice, Specification } from '../../../core/specification/types.ts'
import { capital } from '../../../core/words/text.ts'
import { QuietNote } from './Callout.tsx'

const titles = {
  leadSafe: 'Lead',
  asbestosSuspicion: 'Asbestos suspicion',
  leftOut: 'Safety rule left out',
  dewPoint: 'Dew point',
  cause: 'Cause first',
  compatibility: 'Does it hold on it?',
  advice: 'Advice',
  missingProduct: 'Product missing',
} as const

export function noticeTitle({ kind, hold }: Notice): string {
  return hold ? `Hold: ${titles[kind].toLowerCase()}` : titles[kind]
}

/** What the owner must know or decide about a room; what holds for the whole house stands first. Holds have papers of their own. */
export function RoomNotices(props: {
  readonly specification: Specification
  readonly roomId: string | null
}) {
  const notices = props.specification.notices
    .filter((notice) => notice.roomId === null || notice.roomId === props.roomId)
    .filter((notice) => notice.holdKey === undefined)
    .toSorted((one, other) => Number(other.hold) - Number(one.hold))
  if (notices.length === 0) return null
  return (
    <section className="block" aria-label="Notices">
      <h3>To know and to decide</h3>
      {notices.map((notice) => (
        <QuietNote
          key={`${notice.kind}/${notice.roomId}/${notice.sentence}`}
          kind={
            notice.hold ? 'stop' : notice.kind === 'leadSafe' || notice.kind === 'leftOut' ? 'wait' : 'note'
          }
          title={noticeTitle(notice)}
          words={wordsAfterTitle(notice)}
          source={notice.source}
        />
      ))}
    </section>
  )
}

/** Some sentences begin with their title, for paper says none before them. */
function wordsAfterTitle(notice: Notice): string {
  const title = `${noticeTitle(notice)}: `
  return notice.sentence.startsWith(title) ? capital(notice.sentence.slice(title.length)) : notice.sentence
}

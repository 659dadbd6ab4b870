import { useState } from 'react'
import { Button } from 'react-aria-components'
import { useBookView } from './book-state.ts'

/** What the user should know though the book is open, until they say that they do. */
export function BookWarnings() {
  const warnings = useBookView(({ book }) => book?.warnings)?.join(' ') ?? ''
  const [known, setKnown] = useState('')
  if (warnings === '' || warnings === known) return null
  return (
    <section className="store-bar store-bar-wait" aria-label="Backups" role="status">
      <span className="problem-mark" aria-hidden="true">
        !
      </span>
      <div className="store-words">{warnings}</div>
      <div className="button-row">
        <Button className="plain-button" onPress={() => setKnown(warnings)}>
          OK
        </Button>
      </div>
    </section>
  )
}

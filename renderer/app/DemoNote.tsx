import { useState } from 'react'
import { Button } from 'react-aria-components'
import { useJobState } from '../state/app.ts'

const readKey = 'coatwright-demo-note-read'

/** Says of the demonstration house that it is one, and where to look; until it is put away. */
export function DemoNote() {
  const isDemo = useJobState((state) => state.job?.header.isDemonstration === true)
  const [isRead, setRead] = useState(() => window.localStorage.getItem(readKey) !== null)
  if (!isDemo || isRead) return null
  return (
    <aside className="demo-note" aria-label="About this example">
      <p>
        <strong>This is an example.</strong> People and prices are invented. See <em>Walk</em> for what was
        found, <em>Calendar</em> for who works when, <em>Paper</em> for what is handed out. Yours begins under{' '}
        <em>Book of jobs</em>.
      </p>
      <Button
        className="plain-button"
        onPress={() => {
          window.localStorage.setItem(readKey, 'read')
          setRead(true)
        }}
      >
        Hide this note
      </Button>
    </aside>
  )
}

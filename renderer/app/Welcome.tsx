import { useState } from 'react'
import { Button, FileTrigger } from 'react-aria-components'
import { NewJob } from './BookOfJobs.tsx'
import { importJob, openDemo } from './job-book.ts'

/** An empty book opens here: the three ways to begin. */
export function Welcome() {
  const [isStarting, setStarting] = useState(false)
  return (
    <section className="welcome" aria-label="Begin">
      <h1>Plan a repaint, room by room</h1>
      <p>
        Sketch the rooms, say what is wrong with their surfaces and what they become. Steps, hours, paint,
        price and a calendar follow from that, and sheets to paint from.
      </p>
      <div className="welcome-ways">
        <Button
          className="act-button welcome-way"
          aria-expanded={isStarting}
          onPress={() => setStarting(true)}
        >
          <strong>Start a house</strong>
          <span>An empty sheet for a house of your own</span>
        </Button>
        <Button className="plain-button welcome-way" onPress={() => void openDemo()}>
          <strong>Look at the demo house</strong>
          <span>An invented house of 1926 with 16 rooms, worked through to the last sheet</span>
        </Button>
        <FileTrigger
          acceptedFileTypes={['application/json', '.json']}
          onSelect={(files) => files?.[0] && void importJob(files[0])}
        >
          <Button className="plain-button welcome-way">
            <strong>Open a file</strong>
            <span>A job that was sent out as a file, here or on another machine</span>
          </Button>
        </FileTrigger>
      </div>
      {isStarting ? <NewJob isFocused onDone={() => {}} /> : null}
    </section>
  )
}

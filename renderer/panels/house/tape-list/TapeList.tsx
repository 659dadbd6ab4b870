import './tape-list.css'
import { useDeferredValue, useEffect, useId, useMemo } from 'react'
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import { useJob, useView } from '../../../state/app.ts'
import { freshName } from '../../../state/new-id.ts'
import { showTapeList, tapeText, useTapeList, writeTapeText } from '../../../state/tape-list.ts'
import { keyName } from '../../parts/key-names.ts'
import { makeRooms, readAndPlan, type TapeReading } from './make-rooms.ts'
import { TapeRooms } from './TapeRooms.tsx'

/** Rooms written one a line, as they stand on a pad, with what was understood of them beside. */
export function TapeList() {
  const isOpen = useTapeList((state) => state.isOpen)
  useEffect(() => () => showTapeList(false), [])
  return (
    <ModalOverlay isOpen={isOpen} onOpenChange={showTapeList} isDismissable className="veil">
      <Modal className="dialog-frame tape-frame">
        <Dialog className="dialog tape-list">
          <TapePage />
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}

const examples = {
  imperial:
    'Dining 14 x 14 x 9, 3 win, 2 dr, crown\nBedroom 12-6 x 10\' 3", 2 win, 1 dr\nUpstairs\nBath 5-6 x 8',
  metric:
    'Dining 4,20 x 4,20 x 2,70, 3 win, 2 dr, crown\nBedroom 3.80 x 3.10 m, 2 win, 1 dr\nUpstairs\nBath 1.70 x 2.40',
} as const

function TapePage() {
  const job = useJob()
  const storeyId = useView((state) => state.storeyId)
  const text = useTapeList(tapeText)
  const shown = useDeferredValue(text)
  const hintId = useId()
  const reading = useMemo(() => readAndPlan(job, shown, storeyId, freshName), [job, shown, storeyId])
  const make = () => makeRooms(readAndPlan(job, text, storeyId, freshName))
  return (
    <>
      <Heading slot="title">List of rooms</Heading>
      <div className="tape-columns">
        <div className="tape-writing">
          <label className="entry">
            <span className="label">One room a line</span>
            <textarea
              // biome-ignore lint/a11y/noAutofocus: the sheet is opened to write in this field
              autoFocus
              className="tape-text"
              value={text}
              spellCheck={false}
              placeholder={examples[job.header.unitSystem]}
              aria-describedby={hintId}
              onChange={(event) => writeTapeText(event.target.value)}
              onKeyDown={(event) => {
                if (keyName(event) !== 'Ctrl+Enter') return
                event.preventDefault()
                make()
              }}
            />
          </label>
          <p id={hintId} className="quiet tape-hint">
            Name, two sides, and what you know of height, windows (win), doors (dr), cased openings (co) and
            trim, 2 lights, 1 radiator, closet 2-6 x 6, low 5 high 8, less 4 x 5. A line like “Upstairs” or
            “Ceilings 9” counts for the rooms below it. Words in parentheses go into the note.
          </p>
        </div>
        <TapeRooms reading={reading} />
      </div>
      <div className="button-row sheet-end">
        <Button className="act-button" isDisabled={reading.roomCount === 0} onPress={make}>
          {makeWords(reading)}
        </Button>
        <Button className="plain-button" onPress={() => showTapeList(false)}>
          {text.trim() === '' ? 'Close' : 'Keep the list for later'}
        </Button>
        <span className="quiet">{restWords(reading)}</span>
      </div>
    </>
  )
}

function makeWords({ roomCount }: TapeReading): string {
  if (roomCount === 0) return 'Make these rooms'
  return roomCount === 1 ? 'Make this room' : `Make these ${roomCount} rooms`
}

function restWords({ stopCount, roomCount }: TapeReading): string {
  if (stopCount === 0) return roomCount === 0 ? '' : 'Ctrl+Enter makes them; one undo takes them back.'
  const lines = stopCount === 1 ? '1 line has' : `${stopCount} lines have`
  return `${lines} to be fixed first and ${stopCount === 1 ? 'stays' : 'stay'} in the list.`
}

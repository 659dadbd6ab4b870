import { useEffect, useState } from 'react'
import { Button } from 'react-aria-components'
import type { BackupSummary, ShutBook } from '../../../core/contract/book.ts'
import { machineMoment } from '../../../core/time/site-moment.ts'
import { ask } from '../../bridge/client.ts'
import { jobStore } from '../../state/app.ts'
import { BackupInside } from './BackupInside.tsx'
import { agoWords, kindWords, shutTitles, sizeWords, takenWords, wayWords } from './backup-words.ts'
import { useBookView, wantBookPage } from './book-state.ts'
import { leaveShutBook } from './ways-out.ts'
import './backups.css'

/** Go back to a backup: why the book is shut where it is, the backups there are, and a look inside one. */
export function BackupPage() {
  const book = useBookView((view) => view.book)
  const shut = book?.shut ?? null
  const backups = useBackups(shut?.sentence ?? '')
  const [chosen, setChosen] = useState<string | null>(null)
  const backup = backups?.find(({ name }) => name === chosen) ?? null
  return (
    <div className="backup-page">
      {shut === null ? <OpenHead /> : <ShutHead shut={shut} />}
      <div className="backup-panes">
        <section className="backup-list" aria-label="Backups">
          <h2>Backups</h2>
          {backups === null ? <p className="quiet">Looking for backups …</p> : null}
          {backups?.length === 0 ? (
            <p className="quiet">
              There is no backup yet. The first one is made when you close the program after something was
              stored.
            </p>
          ) : null}
          {backups?.map((each) => (
            <BackupLine
              key={each.name}
              backup={each}
              isChosen={each.name === chosen}
              onChoose={() => setChosen(each.name)}
            />
          ))}
        </section>
        {backup === null ? (
          <p className="backup-inside quiet">
            Choose a backup to look inside it. Looking changes nothing.
            {book === null ? null : (
              <span className="backup-place">The backups are in {book.backupFolder}</span>
            )}
          </p>
        ) : (
          <BackupInside key={backup.name} backup={backup} isOpen={shut === null} />
        )}
      </div>
    </div>
  )
}

/** The list, read again when the book is shut or opened. */
function useBackups(occasion: string): readonly BackupSummary[] | null {
  const [backups, setBackups] = useState<readonly BackupSummary[] | null>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: the occasion is why the list is read again
  useEffect(() => {
    void ask('listBackups', {}).then((answer) => {
      if (answer.ok) setBackups(answer.value)
      else jobStore.refuse(answer.problem)
    })
  }, [occasion])
  return backups
}

function OpenHead() {
  return (
    <header className="backup-head">
      <h1>Go back to a backup</h1>
      <p>
        Choose a backup and look inside it. You can bring back one job next to what is in the book now, or go
        back to the whole backup; then the book as it is now is set aside in this list, not deleted.
      </p>
      <Button className="plain-button" onPress={() => wantBookPage(null)}>
        Leave everything as it is
      </Button>
    </header>
  )
}

function ShutHead({ shut }: { readonly shut: ShutBook }) {
  return (
    <div className="backup-head backup-shut" role="alert">
      <h1>
        <span aria-hidden="true">! </span>
        {shutTitles[shut.reason]}
      </h1>
      <p>{shut.sentence}</p>
      <ul className="backup-ways">
        {shut.waysOut.map((way) => (
          <li key={way}>
            <Button className="plain-button" onPress={() => void leaveShutBook(way)}>
              {wayWords[way].button}
            </Button>{' '}
            <span className="quiet">{wayWords[way].does}</span>
          </li>
        ))}
      </ul>
    </div>
  )
}

function BackupLine(props: {
  readonly backup: BackupSummary
  readonly isChosen: boolean
  readonly onChoose: () => void
}) {
  const { backup } = props
  return (
    <Button className="backup-line" aria-pressed={props.isChosen} onPress={props.onChoose}>
      <strong>{takenWords(machineMoment(new Date(backup.takenAt)))}</strong>
      <span>{agoWords(Date.now() - Date.parse(backup.takenAt))}</span>
      <span className="quiet">
        {sizeWords(backup)} · {kindWords[backup.kind]}
      </span>
    </Button>
  )
}

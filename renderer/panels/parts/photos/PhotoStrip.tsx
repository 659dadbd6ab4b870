import './photos.css'
import { type DragEvent, useEffect, useState } from 'react'
import {
  Button,
  Dialog,
  DialogTrigger,
  FileTrigger,
  Heading,
  Modal,
  ModalOverlay,
} from 'react-aria-components'
import { type Job, records } from '../../../../core/project/job.ts'
import type { Photo } from '../../../../core/project/photo-records.ts'
import { type PhotoStage, photoStages } from '../../../../core/project/vocabulary.ts'
import { usePicture } from '../../../state/pictures.ts'
import { EntryField } from '../EntryField.tsx'
import { putRecord, removeRecord } from '../edits.ts'
import { words } from '../entries.ts'
import { OneOf } from '../OneOf.tsx'
import { filesIn, keepPhotos } from './keep-photos.ts'

const stageWords: Readonly<Record<PhotoStage, string>> = { before: 'Before', after: 'After' }
const stageOptions = photoStages.map((id) => ({ id, label: stageWords[id] }))

interface PhotoStripProps {
  readonly job: Job
  readonly of: Photo['of']
  /** What is shown, `Parlor` or `peeling paint`. */
  readonly subject: string
  /** What a new photo is taken to be. */
  readonly stage: PhotoStage
  /** Takes what is pasted anywhere on the page. */
  readonly takesPaste?: boolean
  /** It is all that its page is for, and says so as long as there is no photo. */
  readonly invites?: boolean
}

/** Photos of a room or of what was found: dropped, pasted or chosen, looked at, named, removed. */
export function PhotoStrip(props: PhotoStripProps) {
  const { job, of, subject, stage, takesPaste = false, invites = false } = props
  const [taken, setTaken] = useState<PhotoStage>(stage)
  const [isOver, setOver] = useState(false)
  const [isBusy, setBusy] = useState(false)
  const photos = photosOf(job, of)
  const isFirst = invites && photos.length === 0
  const take = (files: readonly File[]) => {
    if (files.length === 0) return
    setBusy(true)
    void keepPhotos(files, of, taken).finally(() => setBusy(false))
  }
  usePaste(takesPaste, take)
  const drag = {
    onDragOver: (event: DragEvent) => {
      event.preventDefault()
      setOver(true)
    },
    onDragLeave: () => setOver(false),
    onDrop: (event: DragEvent) => {
      event.preventDefault()
      event.stopPropagation()
      setOver(false)
      take(filesIn(event.dataTransfer.files))
    },
  }
  return (
    <div className={isOver ? 'photos photos-over' : 'photos'} {...drag}>
      {isFirst ? (
        <p>
          Photos of {subject} stay with the job and print behind its sheet: what it looked like before the
          work, and after.
        </p>
      ) : null}
      {photos.length === 0 ? null : (
        <ul className="photo-list" aria-label={`Photos: ${subject}`}>
          {photos.map((photo, index) => (
            <li key={photo.id}>
              <PhotoCard photo={photo} words={`${subject}, photo ${index + 1}`} />
            </li>
          ))}
        </ul>
      )}
      <div className="button-row">
        <FileTrigger
          allowsMultiple
          acceptedFileTypes={['image/jpeg', 'image/png', 'image/webp']}
          onSelect={(files) => take(filesIn(files))}
        >
          <Button
            className={isFirst ? 'act-button' : 'plain-button'}
            aria-label={`Add photos: ${subject}`}
            isDisabled={isBusy}
          >
            Add photos
          </Button>
        </FileTrigger>
        <OneOf label="Taken" options={stageOptions} chosen={taken} onChoose={setTaken} />
        <span className="quiet" role="status">
          {isBusy
            ? 'Making it smaller …'
            : takesPaste
              ? 'Or drop them here, or paste.'
              : 'Or drop them here.'}
        </span>
      </div>
    </div>
  )
}

function photosOf(job: Job, of: Photo['of']): readonly Photo[] {
  return records(job.photos).filter((photo) =>
    of.kind === 'room'
      ? photo.of.kind === 'room' && photo.of.roomId === of.roomId
      : photo.of.kind === 'finding' && photo.of.conditionId === of.conditionId,
  )
}

/** Text that is pasted goes where it always goes; only files are taken. */
function usePaste(isOn: boolean, take: (files: readonly File[]) => void): void {
  useEffect(() => {
    if (!isOn) return
    const listen = (event: ClipboardEvent) => {
      const files = filesIn(event.clipboardData?.files)
      if (files.length === 0) return
      event.preventDefault()
      take(files)
    }
    document.addEventListener('paste', listen)
    return () => document.removeEventListener('paste', listen)
  })
}

/** Small in the list; a press opens it large, with what can be said of it. */
function PhotoCard({ photo, words: name }: { readonly photo: Photo; readonly words: string }) {
  const shown = usePicture(photo.small)
  return (
    <DialogTrigger>
      <Button className="photo-card" aria-label={`Look at ${name}, ${stageWords[photo.stage].toLowerCase()}`}>
        {shown === null ? <span className="photo-none">…</span> : null}
        {shown?.ok ? <img src={shown.value} alt="" /> : null}
        {shown !== null && !shown.ok ? <span className="photo-none">Not in this book</span> : null}
        <span className="photo-stage">{stageWords[photo.stage]}</span>
      </Button>
      <ModalOverlay isDismissable className="veil">
        <Modal className="dialog-frame photo-frame">
          <Dialog className="dialog photo-dialog">
            {({ close }) => <PhotoPage photo={photo} name={name} onDone={close} />}
          </Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  )
}

function PhotoPage(props: { readonly photo: Photo; readonly name: string; readonly onDone: () => void }) {
  const { photo, name, onDone } = props
  const large = usePicture(photo.picture)
  const small = usePicture(photo.small)
  const shown = large?.ok ? large : small
  const set = (change: Partial<Photo>) => putRecord('Change a photo', 'photos', { ...photo, ...change })
  return (
    <>
      <Heading slot="title">{name}</Heading>
      {shown === null ? <p className="quiet">Reading …</p> : null}
      {shown?.ok ? <img className="photo-large" src={shown.value} alt={photo.note || name} /> : null}
      {shown !== null && !shown.ok ? <p>{shown.problem.sentence}</p> : null}
      {large !== null && !large.ok && small?.ok ? (
        <p className="quiet">Only the small one came with the job.</p>
      ) : null}
      <div className="field-grid">
        <OneOf
          label="Taken"
          options={stageOptions}
          chosen={photo.stage}
          onChoose={(stage) => set({ stage })}
        />
        <EntryField
          label="Note"
          width="wide"
          shown={photo.note}
          read={words(200)}
          onCommit={(note) => set({ note })}
        />
      </div>
      <div className="button-row">
        <Button className="act-button" onPress={onDone}>
          Done
        </Button>
        <Button
          className="plain-button remove"
          onPress={() => {
            removeRecord('Remove a photo', 'photos', photo.id)
            onDone()
          }}
        >
          Remove it
        </Button>
      </div>
    </>
  )
}

import './underlay.css'
import { type ReactNode, useState } from 'react'
import { Button, Dialog, FileTrigger, Modal, ModalOverlay } from 'react-aria-components'
import type { Storey } from '../../../../core/project/sketch-records.ts'
import { useJob } from '../../../state/app.ts'
import type { PdfFile } from '../../../state/pdf-pages.ts'
import { Tick } from '../../parts/Tick.tsx'
import { PagePick } from './PagePick.tsx'
import { putPage, putUnder, setUnderlay } from './put-underlay.ts'
import { ScalePage } from './ScalePage.tsx'

/** The picture under a floor's sketch: chosen, scaled, shown or hidden, taken away. */
export function UnderlayPart({ storey }: { readonly storey: Storey }) {
  const [isScaling, setScaling] = useState(false)
  const { underlay } = storey
  return (
    <div className="underlay-part">
      {underlay === undefined ? (
        <ChoosePlan storey={storey} onTaken={() => setScaling(true)} />
      ) : (
        <>
          <Tick
            isOn={underlay.isShown}
            onChange={(isShown) =>
              setUnderlay(isShown ? 'Show the picture' : 'Hide the picture', storey, { ...underlay, isShown })
            }
          >
            Picture under it
          </Tick>
          <Button className="plain-button small" onPress={() => setScaling(true)}>
            Set its scale
          </Button>
          <Sheet isOpen={isScaling} onClose={() => setScaling(false)}>
            <ScalePage storey={storey} underlay={underlay} onDone={() => setScaling(false)} />
          </Sheet>
        </>
      )}
    </div>
  )
}

/** A picture, or a page of a PDF, which is asked for where there are several. */
function ChoosePlan(props: { readonly storey: Storey; readonly onTaken: () => void }) {
  const { storey } = props
  const job = useJob()
  const [isBusy, setBusy] = useState(false)
  const [open, setOpen] = useState<{ readonly name: string; readonly pdf: PdfFile } | null>(null)
  const whileBusy = async (take: Promise<boolean | PdfFile>) => {
    setBusy(true)
    const taken = await take
    setBusy(false)
    if (taken === true) props.onTaken()
    return taken
  }
  const close = () => {
    open?.pdf.close()
    setOpen(null)
  }
  const choose = async (file: File | undefined) => {
    if (file === undefined) return
    const taken = await whileBusy(putUnder(job, storey, file))
    if (typeof taken === 'object') setOpen({ name: file.name, pdf: taken })
  }
  const takePage = async (page: number) => {
    if (open === null) return
    await whileBusy(putPage(job, storey, open.name, open.pdf, page))
    close()
  }
  return (
    <>
      <FileTrigger
        acceptedFileTypes={['image/jpeg', 'image/png', 'image/webp', 'application/pdf']}
        onSelect={(files) => void choose(files?.[0])}
      >
        <Button className="plain-button small" isDisabled={isBusy}>
          {isBusy ? 'Reading …' : 'Put a plan under it: picture or PDF'}
        </Button>
      </FileTrigger>
      <Sheet isOpen={open !== null} onClose={close}>
        {open === null ? null : (
          <PagePick {...open} isBusy={isBusy} onTake={(page) => void takePage(page)} onLeave={close} />
        )}
      </Sheet>
    </>
  )
}

function Sheet(props: {
  readonly isOpen: boolean
  readonly onClose: () => void
  readonly children: ReactNode
}) {
  return (
    <ModalOverlay
      isOpen={props.isOpen}
      onOpenChange={(isOpen) => isOpen || props.onClose()}
      isDismissable
      className="veil"
    >
      <Modal className="dialog-frame underlay-frame">
        <Dialog className="dialog underlay-dialog">{props.children}</Dialog>
      </Modal>
    </ModalOverlay>
  )
}

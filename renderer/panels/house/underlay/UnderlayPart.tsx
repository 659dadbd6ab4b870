import './underlay.css'
import { useState } from 'react'
import { Button, Dialog, FileTrigger, Modal, ModalOverlay } from 'react-aria-components'
import type { Storey } from '../../../../core/project/sketch-records.ts'
import { useJob } from '../../../state/app.ts'
import { Tick } from '../../parts/Tick.tsx'
import { putUnder, setUnderlay } from './put-underlay.ts'
import { ScalePage } from './ScalePage.tsx'

/** The picture under a floor's sketch: chosen, scaled, shown or hidden, taken away. */
export function UnderlayPart({ storey }: { readonly storey: Storey }) {
  const job = useJob()
  const [isBusy, setBusy] = useState(false)
  const [isScaling, setScaling] = useState(false)
  const { underlay } = storey
  const take = async (file: File | undefined) => {
    if (file === undefined) return
    setBusy(true)
    const isTaken = await putUnder(job, storey, file)
    setBusy(false)
    setScaling(isTaken)
  }
  return (
    <div className="underlay-part">
      {underlay === undefined ? (
        <FileTrigger
          acceptedFileTypes={['image/jpeg', 'image/png', 'image/webp']}
          onSelect={(files) => void take(files?.[0])}
        >
          <Button className="plain-button small" isDisabled={isBusy}>
            {isBusy ? 'Being made smaller …' : 'Put a picture of a plan under it'}
          </Button>
        </FileTrigger>
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
          <ModalOverlay isOpen={isScaling} onOpenChange={setScaling} isDismissable className="veil">
            <Modal className="dialog-frame underlay-frame">
              <Dialog className="dialog underlay-dialog">
                <ScalePage storey={storey} underlay={underlay} onDone={() => setScaling(false)} />
              </Dialog>
            </Modal>
          </ModalOverlay>
        </>
      )}
    </div>
  )
}

import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import type { Readiness } from '../../../core/progress/readiness.ts'
import { momentWords } from '../../../core/time/date-words.ts'
import type { LengthUnitSystem } from '../../../core/units/length.ts'

/** Something that is to be ticked although what comes before it is not done, or not dry. */
export interface OutOfOrderTick {
  readonly name: string
  readonly why: Exclude<Readiness, { readonly kind: 'ready' | 'settled' }>
  readonly tick: () => void
}

/** Asks before a tick out of the order of the work is taken. */
export function OutOfOrder(props: {
  readonly asked: OutOfOrderTick | null
  readonly system: LengthUnitSystem
  readonly nameOf: (stepKey: string) => string
  readonly onAnswer: () => void
}) {
  const { asked, onAnswer } = props
  return (
    <ModalOverlay
      className="veil"
      isOpen={asked !== null}
      onOpenChange={(isOpen) => {
        if (!isOpen) onAnswer()
      }}
    >
      <Modal className="dialog-frame">
        <Dialog className="dialog" role="alertdialog">
          {asked === null ? null : (
            <>
              <Heading slot="title">Out of order: {asked.name}</Heading>
              <p>{whyWords(asked.why, props.system, props.nameOf)}</p>
              <div className="button-row sheet-end">
                <Button
                  className="act-button"
                  onPress={() => {
                    asked.tick()
                    onAnswer()
                  }}
                >
                  Check it off all the same
                </Button>
                <Button className="plain-button" autoFocus onPress={onAnswer}>
                  Cancel
                </Button>
              </div>
            </>
          )}
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}

export function whyWords(
  why: OutOfOrderTick['why'],
  system: LengthUnitSystem,
  nameOf: (stepKey: string) => string,
): string {
  switch (why.kind) {
    case 'after': {
      const names = [...new Set(why.stepKeys.map(nameOf))]
      const shown = names.slice(0, 3).join(', ')
      const more = names.length > 3 ? ` and ${names.length - 3} more` : ''
      return `Not checked off yet, and before it in the order of work: ${shown}${more}. Was it done all the same?`
    }
    case 'waiting':
      return `What it goes over is still drying: not before ${momentWords(why.until, system)}. ${why.order.reason} Was it done all the same?`
    case 'overdue':
      return `It should have started by ${momentWords(why.since, system)}. ${why.order.reason} Was it done all the same?`
  }
}

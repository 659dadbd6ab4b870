import { Button } from 'react-aria-components'
import type { Picked } from '../../../../core/sketch/many/picked.ts'
import { viewStore } from '../../../state/app.ts'
import { PageTabs } from '../../parts/PageTabs.tsx'
import { duplicateSelected, removeSelected } from '../selection-actions.ts'
import { pickedWords } from './common.ts'
import { ManyExisting } from './ManyExisting.tsx'
import { ManyFinishes } from './ManyFinishes.tsx'
import { ManyFound } from './ManyFound.tsx'
import { ManyKept } from './ManyKept.tsx'
import { ManySizes } from './ManySizes.tsx'
import { ManyTrim } from './ManyTrim.tsx'
import { PickMany } from './PickMany.tsx'

/** Everything that can be said of several things at once; each field is one step to undo. */
export function ManyThings({ picked }: { readonly picked: Picked }) {
  const what = pickedWords(picked)
  const hasTrim = picked.rooms.length + picked.walls.length > 0
  return (
    <>
      <div className="tab-pad many-head">
        <h2>{what} picked</h2>
        <p className="quiet">What you set here is set for all of them, as one step to undo.</p>
      </div>
      <PageTabs
        label={what}
        tabs={[
          { id: 'size', title: 'Size', page: () => <SizeTab picked={picked} /> },
          ...(hasTrim ? [{ id: 'trim', title: 'Trim', page: () => <ManyTrim picked={picked} /> }] : []),
          { id: 'finish', title: 'Finish', page: () => <ManyFinishes picked={picked} /> },
          { id: 'existing', title: 'There now', page: () => <ManyExisting picked={picked} /> },
          { id: 'found', title: 'Found', page: () => <ManyFound picked={picked} /> },
          { id: 'kept', title: 'Stays', page: () => <ManyKept picked={picked} /> },
        ]}
      />
    </>
  )
}

function SizeTab({ picked }: { readonly picked: Picked }) {
  const canGo = picked.rooms.length + picked.openings.length > 0
  return (
    <div className="tab-pad">
      <ManySizes picked={picked} />
      <PickMany />
      <span className="button-row">
        <Button
          className="plain-button"
          onPress={() => viewStore.setState({ selectedIds: [], roomId: null, surfaceKey: null })}
        >
          Pick nothing
        </Button>
        {picked.rooms.length > 0 ? (
          <Button className="plain-button" onPress={duplicateSelected}>
            Copy them
          </Button>
        ) : null}
        {canGo ? (
          <Button className="stop-button" onPress={removeSelected}>
            Remove them
          </Button>
        ) : null}
      </span>
    </div>
  )
}

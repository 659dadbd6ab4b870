import { inches, zeroLength } from '../../../../core/units/length.ts'
import { EntryField } from '../../parts/EntryField.tsx'
import { wholeNumber } from '../../parts/entries.ts'
import { Tick } from '../../parts/Tick.tsx'
import { LengthField } from '../LengthField.tsx'
import type { OpeningPartProps } from './opening-part.ts'

export function Lights({ opening, set }: OpeningPartProps) {
  const { transom, sidelights } = opening
  return (
    <section className="block">
      <h3>Transom and sidelights</h3>
      <Tick
        isOn={transom !== null}
        onChange={(isOn) =>
          set({ transom: isOn ? { height: inches(14), lightsAcross: 1, lightsDown: 1 } : null })
        }
      >
        Transom inside the opening’s height
      </Tick>
      {transom === null ? null : (
        <div className="field-grid">
          <LengthField
            label="Height"
            length={transom.height}
            onCommit={(height) => set({ transom: { ...transom, height } })}
            isSmall
          />
          <EntryField
            label="Lights across"
            shown={String(transom.lightsAcross)}
            read={wholeNumber(1, 20)}
            onCommit={(lightsAcross) => set({ transom: { ...transom, lightsAcross } })}
            width="short"
          />
          <EntryField
            label="Lights down"
            shown={String(transom.lightsDown)}
            read={wholeNumber(1, 20)}
            onCommit={(lightsDown) => set({ transom: { ...transom, lightsDown } })}
            width="short"
          />
        </div>
      )}
      <Tick
        isOn={sidelights !== null}
        onChange={(isOn) =>
          set({ sidelights: isOn ? { count: 2, width: inches(10), lightsAcross: 1, lightsDown: 3 } : null })
        }
      >
        Sidelights inside the opening’s width
      </Tick>
      {sidelights === null ? null : (
        <div className="field-grid">
          <EntryField
            label="How many"
            shown={String(sidelights.count)}
            read={wholeNumber(1, 2)}
            onCommit={(count) => set({ sidelights: { ...sidelights, count } })}
            width="short"
          />
          <LengthField
            label="Width of each"
            length={sidelights.width ?? zeroLength}
            onCommit={(width) => set({ sidelights: { ...sidelights, width } })}
            isSmall
          />
          <EntryField
            label="Lights across"
            shown={String(sidelights.lightsAcross)}
            read={wholeNumber(1, 20)}
            onCommit={(lightsAcross) => set({ sidelights: { ...sidelights, lightsAcross } })}
            width="short"
          />
          <EntryField
            label="Lights down"
            shown={String(sidelights.lightsDown)}
            read={wholeNumber(1, 20)}
            onCommit={(lightsDown) => set({ sidelights: { ...sidelights, lightsDown } })}
            width="short"
          />
        </div>
      )}
    </section>
  )
}

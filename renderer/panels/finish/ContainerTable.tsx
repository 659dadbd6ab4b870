import { Button } from 'react-aria-components'
import type { Product } from '../../../core/project/shop-records.ts'
import { EntryField } from '../parts/EntryField.tsx'
import { decimalNumber, moneyEntry, words } from '../parts/entries.ts'

/** What a product comes in: sizes and prices, the last of which cannot be removed. */
export function ContainerTable(props: {
  readonly product: Product
  readonly onChange: (containers: Product['containers']) => void
}) {
  const { containers } = props.product
  const replace = (index: number, changes: Partial<Product['containers'][number]>) =>
    props.onChange(containers.map((each, place) => (place === index ? { ...each, ...changes } : each)))
  return (
    <section>
      <h3>Containers</h3>
      <table className="sum-table containers">
        <tbody>
          {containers.map((container, index) => (
            // Containers have no id; their place in the list is what they are.
            // biome-ignore lint/suspicious/noArrayIndexKey: see above
            <tr key={index}>
              <td>
                <EntryField
                  label="Container"
                  isBare
                  shown={container.name}
                  read={words(200, true)}
                  onCommit={(name) => replace(index, { name })}
                />
              </td>
              <td>
                <EntryField
                  label={`${container.name}: holds`}
                  isBare
                  width="short"
                  unit="gal"
                  shown={String(container.gallons)}
                  read={decimalNumber(0.01, 100)}
                  onCommit={(gallons) => replace(index, { gallons })}
                />
              </td>
              <td>
                <EntryField
                  label={`${container.name}: price`}
                  isBare
                  width="short"
                  unit="$"
                  shown={(container.priceCents / 100).toFixed(2)}
                  read={moneyEntry}
                  onCommit={(priceCents) => replace(index, { priceCents })}
                />
              </td>
              <td>
                {containers.length === 1 ? null : (
                  <Button
                    className="plain-button remove"
                    aria-label={`Remove ${container.name}`}
                    onPress={() => props.onChange(containers.filter((_, place) => place !== index))}
                  >
                    Remove
                  </Button>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <Button
        className="plain-button"
        onPress={() => {
          const last = containers.at(-1)
          if (last !== undefined) props.onChange([...containers, { ...last, name: 'another size' }])
        }}
      >
        Add a size
      </Button>
    </section>
  )
}

import { useState } from 'react'
import { Button } from 'react-aria-components'
import { isFilmProduct } from '../../../core/price/consumption.ts'
import { filmText, practicalSpread, wetFilm } from '../../../core/price/spread.ts'
import { type Job, records } from '../../../core/project/job.ts'
import type { Product } from '../../../core/project/shop-records.ts'
import { productIdSchema } from '../../../core/project/shop-records.ts'
import { productClasses, sheens } from '../../../core/project/vocabulary.ts'
import { productClassGlossary } from '../../../core/specification/glossary.ts'
import { classBesideName, productClassWords, sheenWords } from '../../../core/specification/trade-words.ts'
import { formatMinutes } from '../../../core/units/duration.ts'
import type { LengthUnitSystem } from '../../../core/units/length.ts'
import { roundToCents } from '../../../core/units/money.ts'
import { capital } from '../../../core/words/text.ts'
import { newId } from '../../state/new-id.ts'
import { Choice, optionsOf } from '../parts/Choice.tsx'
import { EntryField } from '../parts/EntryField.tsx'
import { putRecord, removeRecord } from '../parts/edits.ts'
import { decimalNumber, orNothing, wholeNumber, words } from '../parts/entries.ts'
import { type Column, PickTable } from '../parts/PickTable.tsx'
import { Tick } from '../parts/Tick.tsx'
import { ContainerTable } from './ContainerTable.tsx'

const baseWords = { waterborne: 'water-borne', oil: 'oil', shellac: 'shellac', mineral: 'mineral' } as const
const bases = ['waterborne', 'oil', 'shellac', 'mineral'] as const

/** The shop's products by class, with the figures of their labels. */
export function ProductsTab({ job }: { readonly job: Job }) {
  const products = records(job.products)
  const [pickedId, setPickedId] = useState<string | null>(products[0]?.id ?? null)
  const product = products.find((each) => each.id === pickedId)

  function add() {
    const id = newId('product')
    putRecord('Add a product', 'products', {
      ...(product ?? freshProduct),
      id,
      name: product === undefined ? freshProduct.name : `${product.name}, copy`,
    })
    setPickedId(id)
  }

  return (
    <div className="two-panes">
      <div className="pane pane-wide">
        <div className="tab-intro">
          <p>
            Put the figures of the label you use on each; the brand goes on the shopping list. The first of a
            class is taken where a step names no product.
          </p>
          <Button className="plain-button" onPress={add}>
            Add a product like the picked one
          </Button>
        </div>
        <div className="scroll">
          <PickTable
            label="Products"
            columns={columns}
            rows={products}
            keyOf={(each) => each.id}
            picked={pickedId}
            onPick={setPickedId}
          />
        </div>
      </div>
      <aside className="pane pane-side" aria-label="The product picked">
        {product === undefined ? (
          <p className="quiet">Pick a product to change the figures of its label.</p>
        ) : (
          <ProductPaper key={product.id} product={product} system={job.header.unitSystem} />
        )}
      </aside>
    </div>
  )
}

const freshProduct: Product = {
  // Each product made from it gets an id of its own.
  id: productIdSchema.parse('product'),
  name: 'New product',
  brand: '',
  productClass: 'latexWall',
  base: 'waterborne',
  sheens: ['eggshell'],
  volumeSolidsPercent: 38,
  dryFilmMils: 1.5,
  lossPercent: 15,
  minimumTemperatureC: 10,
  touchDryMinutes: 60,
  recoatMinimumMinutes: 240,
  recoatMaximumMinutes: null,
  openTimeMinimumMinutes: null,
  openTimeMaximumMinutes: null,
  fumes: false,
  containers: [{ name: 'gallon', gallons: 1, priceCents: roundToCents(4500) }],
  source: 'shop assumption',
}

const columns: readonly Column<Product>[] = [
  {
    id: 'name',
    head: 'Product',
    cell: (product) => (
      <>
        {product.name}
        <div className="quiet">{classBesideName(productClassWords[product.productClass], product.name)}</div>
      </>
    ),
  },
  { id: 'base', head: 'Base', cell: (product) => baseWords[product.base] },
  {
    id: 'spread',
    head: 'Spreads, sq ft / gal',
    isNumber: true,
    cell: (product) => (isFilmProduct(product) ? Math.round(practicalSpread(product)) : '–'),
  },
  {
    id: 'touch',
    head: 'Touch dry',
    isNumber: true,
    cell: (product) => formatMinutes(product.touchDryMinutes),
  },
  {
    id: 'recoat',
    head: 'Recoat after',
    isNumber: true,
    cell: (product) => formatMinutes(product.recoatMinimumMinutes),
  },
  {
    id: 'limit',
    head: 'and within',
    isNumber: true,
    cell: (product) =>
      product.recoatMaximumMinutes === null ? 'no limit' : formatMinutes(product.recoatMaximumMinutes),
  },
]

interface ProductParts {
  readonly product: Product
  readonly change: (changes: Partial<Product>) => void
}

function ProductPaper({ product, system }: { readonly product: Product; readonly system: LengthUnitSystem }) {
  const change = (changes: Partial<Product>) =>
    putRecord(`Change ${product.name}`, 'products', { ...product, ...changes })
  return (
    <section className="block" aria-label={product.name}>
      <EntryField
        label="Name"
        shown={product.name}
        read={words(200, true)}
        width="wide"
        onCommit={(name) => change({ name })}
      />
      <EntryField
        label="Brand"
        hint="as on the can; empty where you buy what there is"
        shown={product.brand}
        read={words(200)}
        width="wide"
        onCommit={(brand) => change({ brand })}
      />
      <LabelFigures product={product} change={change} />
      <p className="quiet">
        {productClassGlossary[product.productClass]}
        {isFilmProduct(product)
          ? ` For this dry film a wet-film comb reads ${filmText(wetFilm(product), system)} wet.`
          : ''}
      </p>
      <Tick isOn={product.fumes} onChange={(fumes) => change({ fumes })}>
        Strong solvent smell: sleeping rooms stay empty until touch dry
      </Tick>
      <SheensSold product={product} change={change} />
      <ContainerTable product={product} onChange={(containers) => change({ containers })} />
      <EntryField
        label="Where the figures come from"
        lines={2}
        width="wide"
        shown={product.source}
        read={words(4000)}
        onCommit={(source) => change({ source })}
      />
      <div className="button-row">
        <Button
          className="plain-button remove"
          onPress={() => removeRecord(`Remove ${product.name}`, 'products', product.id)}
        >
          Remove {capital(product.name)}
        </Button>
      </div>
    </section>
  )
}

/** What stands on the label: what it is, how far it goes, how long it dries. */
function LabelFigures({ product, change }: ProductParts) {
  const number = (
    label: string,
    name: 'volumeSolidsPercent' | 'dryFilmMils' | 'lossPercent' | 'minimumTemperatureC',
    [least, most]: readonly [number, number],
    unit: string,
  ) => (
    <EntryField
      label={label}
      width="short"
      unit={unit}
      shown={String(product[name])}
      read={decimalNumber(least, most)}
      onCommit={(value) => change({ [name]: value })}
    />
  )
  const minutes = (label: string, name: 'touchDryMinutes' | 'recoatMinimumMinutes') => (
    <EntryField
      label={label}
      width="short"
      unit="min"
      shown={String(product[name])}
      read={wholeNumber(0, 129_600)}
      onCommit={(value) => change({ [name]: value })}
    />
  )
  const optional = (
    label: string,
    name: 'recoatMaximumMinutes' | 'openTimeMinimumMinutes' | 'openTimeMaximumMinutes',
  ) => (
    <EntryField
      label={label}
      width="short"
      unit="min"
      hint="empty is no limit"
      shown={product[name] === null ? '' : String(product[name])}
      read={orNothing(wholeNumber(0, 129_600))}
      onCommit={(value) => change({ [name]: value })}
    />
  )
  return (
    <div className="field-grid">
      <Choice
        label="Class"
        options={optionsOf(productClasses, productClassWords)}
        chosen={product.productClass}
        onChoose={(productClass) => change({ productClass })}
      />
      <Choice
        label="Base"
        options={optionsOf(bases, baseWords)}
        chosen={product.base}
        onChoose={(base) => change({ base })}
      />
      {number('Volume solids', 'volumeSolidsPercent', [1, 100], '%')}
      {number('Dry film of a coat', 'dryFilmMils', [0.01, 100], 'mils')}
      {number('Lost in tray and texture', 'lossPercent', [0, 90], '%')}
      {number('Not colder than', 'minimumTemperatureC', [-30, 60], '°C')}
      {minutes('Touch dry after', 'touchDryMinutes')}
      {minutes('Next coat after', 'recoatMinimumMinutes')}
      {optional('Next coat within', 'recoatMaximumMinutes')}
      {optional('Open time from', 'openTimeMinimumMinutes')}
      {optional('Open time until', 'openTimeMaximumMinutes')}
    </div>
  )
}

function SheensSold({ product, change }: ProductParts) {
  return (
    <fieldset className="people">
      <legend>Comes in</legend>
      {sheens.map((sheen) => (
        <Tick
          key={sheen}
          isOn={product.sheens.includes(sheen)}
          onChange={(isOn) =>
            change({
              sheens: isOn ? [...product.sheens, sheen] : product.sheens.filter((each) => each !== sheen),
            })
          }
        >
          {sheenWords[sheen]}
        </Tick>
      ))}
    </fieldset>
  )
}

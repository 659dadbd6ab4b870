import '../../panels/parts/station-page.css'
import '../../panels/finish/finish.css'
import '../../panels/calendar/calendar.css'
import './shop.css'
import type { ReactNode } from 'react'
import { Button } from 'react-aria-components'
import type { Business } from '../../../core/project/business-record.ts'
import { type CrewEdits, CrewTab } from '../../panels/calendar/CrewTab.tsx'
import { RatesTab } from '../../panels/figures/RatesTab.tsx'
import { ProductsTab } from '../../panels/finish/ProductsTab.tsx'
import { RulesTab } from '../../panels/finish/RulesTab.tsx'
import { changeBusiness, putRecord, removeRecord } from '../../panels/parts/edits.ts'
import { PageTabs } from '../../panels/parts/PageTabs.tsx'
import { useJob } from '../../state/app.ts'
import { useSpecification } from '../../state/derived.ts'
import { openLast } from '../job-book.ts'
import { BusinessTab } from './BusinessTab.tsx'
import { MoneyTab } from './MoneyTab.tsx'
import { RoomKindsTab } from './RoomKindsTab.tsx'
import { TextsTab } from './TextsTab.tsx'

type AssumedPart = Business['assumed'][number]

const storedEdits: CrewEdits = {
  put: (person, stored) =>
    putRecord(stored === null ? `Add ${person.name}` : `Change ${stored.name}’s entry`, 'crew', person),
  takeOff: (person) => removeRecord(`Take ${person.name} off the crew`, 'crew', person.id),
}

/** The shop sheet: once in the book, edited and stored like a job. A new job starts with a copy of all of it. */
export function ShopPage() {
  const job = useJob()
  const specification = useSpecification()
  const { business, houseRules } = job
  const part = (of: AssumedPart | null, page: ReactNode) => () => (
    <div className="shop-part">
      {of === null ? null : <Assumed business={business} of={of} />}
      {page}
    </div>
  )
  return (
    <section className="station-page shop-page" aria-label="Shop sheet">
      <PageTabs
        label="Shop sheet"
        tabs={[
          { id: 'business', title: 'Business', page: part(null, <BusinessTab business={business} />) },
          { id: 'people', title: 'People', page: part('people', <CrewTab job={job} edits={storedEdits} />) },
          {
            id: 'money',
            title: 'Money and hours',
            page: part('money', <MoneyTab houseRules={houseRules} />),
          },
          {
            id: 'rates',
            title: 'Rates',
            page: part('rates', <RatesTab job={job} specification={specification} />),
          },
          { id: 'kinds', title: 'Kinds of rooms', page: part(null, <RoomKindsTab />) },
          { id: 'products', title: 'Products', page: part('products', <ProductsTab job={job} />) },
          {
            id: 'rules',
            title: 'Rules',
            page: part(null, <RulesTab job={job} specification={specification} hasSafety={false} />),
          },
          { id: 'texts', title: 'Proposal', page: part('texts', <TextsTab business={business} />) },
        ]}
        aside={
          <Button className="plain-button" onPress={() => void openLast()}>
            Back to the job
          </Button>
        }
      />
    </section>
  )
}

const assumedWords: Readonly<Record<AssumedPart, string>> = {
  people: 'The person, the hours and the wage below are shop assumptions until you put in your own.',
  money: 'The percentages below are shop assumptions; taxes are 0 until you put in your state’s.',
  rates: 'The rates below are shop assumptions except where a source is named.',
  products: 'Prices below are shop assumptions; films and drying times carry their source.',
  texts:
    'The sentences and payment steps below are a start, not legal advice. Read them before you send one.',
}

function Assumed({ business, of }: { readonly business: Business; readonly of: AssumedPart }) {
  const { assumed } = business
  if (!assumed.includes(of)) return null
  return (
    <div className="shop-assumed">
      <p className="quiet">
        <strong>Assumed.</strong> {assumedWords[of]}
      </p>
      <Button
        className="plain-button"
        onPress={() =>
          changeBusiness('Say that this is the shop’s own', {
            assumed: assumed.filter((each) => each !== of),
          })
        }
      >
        These are our own
      </Button>
    </div>
  )
}

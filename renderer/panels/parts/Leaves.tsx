import type { ReactNode } from 'react'
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components'

interface Leaf {
  readonly id: string
  readonly title: string
  readonly page: () => ReactNode
}

/** The leaves of a station: one is open, the others are a key or a click away. */
export function Leaves(props: {
  readonly label: string
  readonly leaves: readonly Leaf[]
  readonly aside?: ReactNode
}) {
  return (
    <Tabs className="leaves">
      <div className="leaves-head">
        <TabList aria-label={props.label} className="leaves-list">
          {props.leaves.map((leaf) => (
            <Tab key={leaf.id} id={leaf.id} className="leaf-tab">
              {leaf.title}
            </Tab>
          ))}
        </TabList>
        {props.aside}
      </div>
      {props.leaves.map((leaf) => (
        <TabPanel key={leaf.id} id={leaf.id} className="leaf-page">
          {leaf.page()}
        </TabPanel>
      ))}
    </Tabs>
  )
}

import type { ReactNode } from 'react'
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components'

interface PageTab {
  readonly id: string
  readonly title: string
  readonly page: () => ReactNode
}

/** The tabs of a station: one is open, the others are a key or a click away. */
export function PageTabs(props: {
  readonly label: string
  readonly tabs: readonly PageTab[]
  readonly aside?: ReactNode
}) {
  return (
    <Tabs className="tabs">
      <div className="tabs-head">
        <TabList aria-label={props.label} className="tabs-list">
          {props.tabs.map((tab) => (
            <Tab key={tab.id} id={tab.id} className="tab-head">
              {tab.title}
            </Tab>
          ))}
        </TabList>
        {props.aside}
      </div>
      {props.tabs.map((tab) => (
        <TabPanel key={tab.id} id={tab.id} className="tab-page">
          {tab.page()}
        </TabPanel>
      ))}
    </Tabs>
  )
}

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
  /** Which tab is open, where the station decides that. */
  readonly open?: string
  readonly onOpen?: (id: string) => void
}) {
  const { open, onOpen } = props
  return (
    <Tabs
      className="tabs"
      {...(open === undefined ? {} : { selectedKey: open })}
      onSelectionChange={(id) => onOpen?.(String(id))}
    >
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
          <h2 className="unseen">{tab.title}</h2>
          {tab.page()}
        </TabPanel>
      ))}
    </Tabs>
  )
}

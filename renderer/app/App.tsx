import { useEffect } from 'react'
import { shopKey } from '../../core/contract/requests.ts'
import { CalendarStation } from '../panels/calendar/CalendarStation.tsx'
import { FiguresStation } from '../panels/figures/FiguresStation.tsx'
import { FinishStation } from '../panels/finish/FinishStation.tsx'
import { HouseStation } from '../panels/house/HouseStation.tsx'
import { PaperStation } from '../panels/paper/PaperStation.tsx'
import { WhatChangedCard } from '../panels/parts/what-changed/WhatChangedCard.tsx'
import { SiteStation } from '../panels/site/SiteStation.tsx'
import { WalkStation } from '../panels/walk/WalkStation.tsx'
import { type Station, useJobState, useView } from '../state/app.ts'
import { watchChanges } from '../state/last-change.ts'
import { usePreparedPlanner } from '../state/planner.ts'
import { AllJobsPage } from './all-jobs/AllJobsPage.tsx'
import { BackupPage } from './backups/BackupPage.tsx'
import { BookWarnings } from './backups/BookWarnings.tsx'
import { useBackupPage, useBookView, watchBookState } from './backups/book-state.ts'
import { ClosedBook } from './ClosedBook.tsx'
import { DemoNote } from './DemoNote.tsx'
import { forgetRemoved } from './forget-removed.ts'
import { Guard } from './Guard.tsx'
import { HelpPage } from './help/HelpPage.tsx'
import { JobSheet } from './JobSheet.tsx'
import { listenForKeys } from './keys.ts'
import { LeavingDialog } from './LeavingDialog.tsx'
import { guardClosing } from './leaving.ts'
import { listenForMishaps } from './mishaps.ts'
import { ProblemNote } from './ProblemNote.tsx'
import { StationStrip, stationNames } from './StationStrip.tsx'
import { StoreBar } from './StoreBar.tsx'
import { ShopPage } from './shop/ShopPage.tsx'
import { TitleBlock } from './TitleBlock.tsx'
import { watchBook } from './watch-book.ts'

const pages: Readonly<Record<Station, () => React.JSX.Element>> = {
  house: HouseStation,
  walk: WalkStation,
  finish: FinishStation,
  figures: FiguresStation,
  calendar: CalendarStation,
  site: SiteStation,
  paper: PaperStation,
}

/** Where changes of steps, price or plan are made; House says its own figures, and its sheet needs the room. */
const changeable: readonly Station[] = ['walk', 'finish', 'figures', 'calendar']

/** The sheet: stations along its upper edge, the work in the middle, the title block along the lower edge. */
export function App() {
  const job = useJobState((state) => state.job)
  const isOpen = job !== null
  const jobKey = useJobState((state) => state.jobKey)
  const isShop = jobKey === shopKey
  const station = useView((state) => state.station)
  useEffect(listenForKeys, [])
  useEffect(listenForMishaps, [])
  useEffect(watchBook, [])
  useEffect(watchChanges, [])
  useEffect(guardClosing, [])
  useEffect(forgetRemoved, [])
  useEffect(watchBookState, [])
  const isBackupPage = useBackupPage()
  const isAllJobs = useBookView(({ page }) => page === 'allJobs')
  usePreparedPlanner()
  const Page = isShop ? ShopPage : pages[station]
  return (
    <div className="sheet">
      <div>
        <StationStrip isOpen={isOpen && !isShop} />
        <DemoNote />
      </div>
      <main
        className="station"
        id="station"
        aria-label={isShop ? 'shop sheet' : station}
        key={isBackupPage || isAllJobs ? 'book' : `${jobKey} ${station}`}
      >
        {isBackupPage || isAllJobs || !isOpen ? null : (
          <h1 className="unseen">{isShop ? 'Shop sheet' : stationNames[station].name}</h1>
        )}
        <Guard
          part={
            isBackupPage || isAllJobs || !isOpen
              ? 'The book of jobs'
              : isShop
                ? 'The shop sheet'
                : `The ${stationNames[station].name} station`
          }
          job={job}
        >
          {isBackupPage ? <BackupPage /> : isAllJobs ? <AllJobsPage /> : isOpen ? <Page /> : <ClosedBook />}
        </Guard>
      </main>
      {isOpen && !isShop && !isBackupPage && !isAllJobs && changeable.includes(station) ? (
        <Guard part="What changed" job={job} isNarrow>
          <WhatChangedCard />
        </Guard>
      ) : null}
      <Guard part="The job sheet" job={job} isNarrow>
        {isShop ? null : <JobSheet />}
      </Guard>
      <ProblemNote />
      <BookWarnings />
      <Guard part="The note on storing" job={job} isNarrow>
        <StoreBar />
      </Guard>
      <Guard part="The title block" job={job} isNarrow>
        <TitleBlock />
      </Guard>
      <Guard part="The help page" job={job} isNarrow>
        <HelpPage />
      </Guard>
      <LeavingDialog />
    </div>
  )
}

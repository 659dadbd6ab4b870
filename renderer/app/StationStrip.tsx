import { HintButton } from '../panels/parts/HintButton.tsx'
import { type Station, stations, useView, viewStore } from '../state/app.ts'
import { BookOfJobs } from './BookOfJobs.tsx'
import { useBookView, wantBookPage } from './backups/book-state.ts'

export const stationNames: Readonly<Record<Station, { readonly name: string; readonly asks: string }>> = {
  house: { name: 'House', asks: 'what is there' },
  walk: { name: 'Walk', asks: 'what is wrong' },
  finish: { name: 'Finish', asks: 'what it becomes' },
  figures: { name: 'Figures', asks: 'how much' },
  calendar: { name: 'Calendar', asks: 'who and when' },
  site: { name: 'Site', asks: 'what is done' },
  paper: { name: 'Paper', asks: 'what goes out' },
}

export function StationStrip(props: { readonly isOpen: boolean }) {
  const current = useView((state) => state.station)
  const isOnTable = useBookView(({ page }) => page === null)
  return (
    <header className="strip">
      <span className="wordmark">Coatwright</span>
      <nav aria-label="Stations" className="strip-stations">
        {stations.map((station, index) => (
          <HintButton
            key={station}
            className="strip-station"
            isDisabled={!props.isOpen}
            aria-current={props.isOpen && isOnTable && station === current ? 'page' : 'false'}
            hint={`${stationNames[station].name} (Alt+${index + 1})`}
            onPress={() => {
              wantBookPage(null)
              viewStore.setState({ station })
            }}
          >
            <span className="strip-name">{stationNames[station].name}</span>
            <span className="strip-asks">{stationNames[station].asks}</span>
          </HintButton>
        ))}
      </nav>
      <BookOfJobs />
    </header>
  )
}

import './help.css'
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import { useView, viewStore } from '../../state/app.ts'
import { type HelpFacts, type HelpSection, helpSections, reportFacts, runsAs } from './help-text.ts'
import { type KeyPlace, keyPlaces, shownKeys } from './key-list.ts'

/** Everything a user has to know about the program itself, over any page; opened by F1 and from the title block. */
export function HelpPage() {
  const isOpen = useView((state) => state.isHelpOpen)
  const host = useView((state) => state.host)
  const close = () => viewStore.setState({ isHelpOpen: false })
  return (
    <ModalOverlay isOpen={isOpen} onOpenChange={(stays) => stays || close()} isDismissable className="veil">
      <Modal className="dialog-frame help-frame">
        <Dialog className="dialog help">
          <header className="help-head">
            <Heading slot="title">Help</Heading>
            <p className="quiet">
              {host === null
                ? 'The program’s host did not answer; some facts are missing below.'
                : `Coatwright ${host.version}, ${runsAs(host.host)}`}
            </p>
            <Button className="act-button" onPress={close}>
              Close
            </Button>
          </header>
          <HelpBody facts={host} />
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}

function HelpBody({ facts }: { readonly facts: HelpFacts | null }) {
  const sections = helpSections(facts)
  return (
    <div className="help-body">
      <nav aria-label="Help" className="help-contents">
        <ul>
          {[{ id: 'keys', title: 'Keys' }, ...sections].map(({ id, title }) => (
            <li key={id}>
              <Button
                className="help-jump"
                onPress={() => document.getElementById(`help-${id}`)?.scrollIntoView()}
              >
                {title}
              </Button>
            </li>
          ))}
        </ul>
      </nav>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reached by keys */}
      <section className="help-text" tabIndex={0} aria-label="Help text">
        <Keys />
        {sections.map((section) => (
          <Section key={section.id} section={section} facts={facts} />
        ))}
      </section>
    </div>
  )
}

function Keys() {
  return (
    <section id="help-keys" aria-labelledby="help-keys-title">
      <h3 id="help-keys-title">Keys</h3>
      <p className="quiet">On a Mac, Command stands for Ctrl and Option for Alt.</p>
      <div className="help-keys">
        {keyPlaces.map((place) => (
          <KeyTable key={place.id} place={place} />
        ))}
      </div>
    </section>
  )
}

function KeyTable({ place }: { readonly place: KeyPlace }) {
  return (
    <table className="help-table">
      <caption>{place.where}</caption>
      <tbody>
        {place.lines.map((line) => (
          <tr key={line.keys.join()}>
            <th scope="row">
              <kbd>{shownKeys(line)}</kbd>
            </th>
            <td>{line.does}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function Section({ section, facts }: { readonly section: HelpSection; readonly facts: HelpFacts | null }) {
  return (
    <section id={`help-${section.id}`} aria-labelledby={`help-${section.id}-title`}>
      <h3 id={`help-${section.id}-title`}>{section.title}</h3>
      {section.paragraphs.map((paragraph) => (
        <p key={paragraph}>{paragraph}</p>
      ))}
      {section.id === 'report' ? <Facts facts={facts} /> : null}
    </section>
  )
}

/** Picked as a whole by one click, to be copied. */
function Facts({ facts }: { readonly facts: HelpFacts | null }) {
  const size = `${window.innerWidth} by ${window.innerHeight}, ${window.devicePixelRatio} to 1`
  return (
    <pre className="help-facts" data-testid="report-facts">
      {reportFacts(facts, navigator.userAgent, size).join('\n')}
    </pre>
  )
}

import { useState } from 'react'
import { Button, FileTrigger } from 'react-aria-components'
import { logoSide } from '../../../core/pictures/picture-bounds.ts'
import type { Business } from '../../../core/project/business-record.ts'
import { problem } from '../../../core/project/problem.ts'
import { changeBusiness } from '../../panels/parts/edits.ts'
import { jobStore } from '../../state/app.ts'
import { takePicture, usePicture } from '../../state/pictures.ts'

/** The picture at the head of papers for the client: chosen, looked at, taken away. */
export function LogoPart({ logo }: Pick<Business, 'logo'>) {
  const [isTaking, setTaking] = useState(false)

  async function take(file: File) {
    setTaking(true)
    const taken = await takePicture(file, [logoSide])
    setTaking(false)
    const hash = taken.ok ? taken.value[0]?.hash : undefined
    if (hash !== undefined) changeBusiness('Put a logo on the letterhead', { logo: hash })
    if (!taken.ok) jobStore.refuse(problem('notValid', `${file.name}: ${taken.problem.sentence}`))
  }

  return (
    <section className="block" aria-label="Logo">
      <h3>Logo</h3>
      {logo === null ? (
        <p className="quiet">
          A picture (PNG, JPEG or WebP) for the top of proposals, change orders and invoices, printed up to 60
          mm wide and 16 mm high. What is transparent becomes white. Jobs started before keep their letterhead
          until it is brought up to date there.
        </p>
      ) : (
        <LogoShown hash={logo} />
      )}
      <div className="button-row">
        <FileTrigger
          acceptedFileTypes={['image/png', 'image/jpeg', 'image/webp']}
          onSelect={(files) => files?.[0] && void take(files[0])}
        >
          <Button className="plain-button" isDisabled={isTaking}>
            {logo === null ? 'Choose a picture' : 'Choose another picture'}
          </Button>
        </FileTrigger>
        {logo === null ? null : (
          <Button
            className="plain-button"
            onPress={() => changeBusiness('Take the logo off the letterhead', { logo: null })}
          >
            Take it off
          </Button>
        )}
      </div>
    </section>
  )
}

function LogoShown({ hash }: { readonly hash: string }) {
  const address = usePicture(hash)
  if (address === null) return null
  return address.ok ? (
    <img className="shop-logo" src={address.value} alt="The logo, as it is printed" />
  ) : (
    <p role="alert">{address.problem.sentence}</p>
  )
}

import { Label, Radio, RadioGroup } from 'react-aria-components'
import { schemesOf } from '../../../core/agreement/color-schemes.ts'
import { useJob } from '../../state/app.ts'
import { type PaperDocument, paperDocuments } from './documents.ts'

export function DocumentList(props: {
  readonly chosen: PaperDocument['id'] | null
  readonly onChoose: (id: PaperDocument['id']) => void
}) {
  const job = useJob()
  const hasSchemes = schemesOf(job).length > 0
  const shown = paperDocuments.filter(({ id }) => id !== 'colorSchemes' || hasSchemes)
  return (
    <RadioGroup
      className="paper-list"
      value={props.chosen ?? ''}
      onChange={(value) => {
        const picked = paperDocuments.find(({ id }) => id === value)
        if (picked !== undefined) props.onChoose(picked.id)
      }}
    >
      <Label>Document</Label>
      {shown.map((each) => (
        <Radio key={each.id} value={each.id} className="paper-option">
          <strong>{each.name}</strong>
          <span className="quiet">{each.holds}</span>
        </Radio>
      ))}
    </RadioGroup>
  )
}

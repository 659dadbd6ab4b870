import { Label, Radio, RadioGroup } from 'react-aria-components'
import { type PaperDocument, paperDocuments } from './documents.ts'

export function DocumentList(props: {
  readonly chosen: PaperDocument['id'] | null
  readonly onChoose: (id: PaperDocument['id']) => void
}) {
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
      {paperDocuments.map((each) => (
        <Radio key={each.id} value={each.id} className="paper-option">
          <strong>{each.name}</strong>
          <span className="quiet">{each.holds}</span>
        </Radio>
      ))}
    </RadioGroup>
  )
}

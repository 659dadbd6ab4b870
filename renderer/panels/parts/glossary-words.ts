import { keysOf, tableByKey } from '../../../core/lists/lists.ts'
import type { GlossaryEntry } from '../../../core/specification/glossary.ts'
import {
  coatGlossary,
  conditionGlossary,
  severityGlossary,
  sheenGlossary,
  substrateGlossary,
} from '../../../core/specification/glossary.ts'

type Texts<Tag extends string> = Readonly<Record<Tag, string>>

function texts<Tag extends string>(
  glossary: Readonly<Record<Tag, GlossaryEntry>>,
  part: 'meaning' | 'recognise',
): Texts<Tag> {
  // One text for each entry, so that no tag is missing.
  return tableByKey(keysOf<Tag>(glossary), (tag) => glossary[tag][part])
}

/** What each word of the lists means, shown under it where it is picked. */
export const conditionNotes = texts(conditionGlossary, 'meaning')
export const coatNotes = texts(coatGlossary, 'meaning')
export const substrateNotes = texts(substrateGlossary, 'meaning')
export const sheenNotes = texts(sheenGlossary, 'meaning')
export const severityNotes = texts(severityGlossary, 'meaning')

/** How to tell that it is what one looks at. */
export const conditionSigns = texts(conditionGlossary, 'recognise')
export const coatSigns = texts(coatGlossary, 'recognise')

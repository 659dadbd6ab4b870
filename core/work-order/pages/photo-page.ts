import { html, type Markup } from '../html-template.ts'
import { namedPicture } from '../pictured.ts'
import type { PhotoLine, RoomSheet } from '../room-sheet/sheet-types.ts'

/** Four rows of three fit a page of either paper. */
const photosOnPage = 12

/** Photos of a room set behind its sheet, those taken before the work beside those taken after it; no page where there are none. */
export function photoPages(room: RoomSheet): readonly ((pageName: string) => Markup)[] {
  const count = Math.ceil(room.photos.length / photosOnPage)
  return Array.from({ length: count }, (_, index) => {
    const photos = room.photos.slice(index * photosOnPage, (index + 1) * photosOnPage)
    return (pageName: string) => html`<section class="sheet ${pageName}">
<header class="head room-head"><h2><span class="number">${room.number}</span> ${room.name}</h2><p>Photos${count > 1 ? `, page ${index + 1} of ${count}` : ''}</p></header>
<div class="photos">${photos.map(photoFigure)}</div></section>`
  })
}

function photoFigure({ picture, number, subject, stage, note }: PhotoLine): Markup {
  const words = `${stage === 'before' ? 'Before' : 'After'}: ${subject}`
  return html`<figure class="photo">${namedPicture(picture, html`${words}`)}
<figcaption>${number === null ? null : html`<span class="ring">${number}</span> `}<b>${words}</b>${note === '' ? null : html`. ${note}`}</figcaption></figure>`
}

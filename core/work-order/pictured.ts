import { asMarkup, type Markup } from './html-template.ts'

/**
 * A paper names its pictures by their hashes and holds none, so that it stays small where it is kept and the same picture is kept once. Before
 * it is shown, printed or saved they are put in (`withPictures`).
 *
 * @param hash of the picture, as a photo has it
 * @param words say what it shows, already safe inside an attribute
 */
export function namedPicture(hash: string, words: Markup): Markup {
  return asMarkup(`<img data-picture="${hash.replace(/[^0-9a-f]/g, '')}" alt="${words.markup}">`)
}

/** The quotes of an attribute are escaped where a paper is kept inside JSON. */
const named = /data-picture=\\?"([0-9a-f]{64})\\?"/g

/** Hashes of the pictures a paper names. */
export function picturesNamed(paper: string): readonly string[] {
  return [...new Set([...paper.matchAll(named)].flatMap(([, hash]) => hash ?? []))]
}

/** The paper with its pictures put in; one that is not there leaves its words. `addressOf` gives a data or blob address, or null. */
export function withPictures(html: string, addressOf: (hash: string) => string | null): string {
  return html.replace(named, (text, hash: string) => {
    const address = addressOf(hash)
    return address === null ? text : `src="${address}"`
  })
}

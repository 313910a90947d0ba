import { Document, renderToBuffer } from '@react-pdf/renderer'
import { createElement } from 'react'
import { type Letter, type LetterHead, LetterPage } from './letter-page.tsx'

/** Letters for window envelopes as one PDF, each on a sheet of its own, black on white. What a typeface lacks is written as `printable` does. */
export async function renderLetters(letters: readonly Letter[], head: LetterHead): Promise<Uint8Array<ArrayBuffer>> {
  const sheets = letters.map((letter, i) => createElement(LetterPage, { key: i, letter, head }))
  return new Uint8Array(await renderToBuffer(createElement(Document, { language: head.language }, ...sheets)))
}

'use client'
import { Afterwards, Piece, piece } from '../piece.tsx'

export const PICTURES_NOTE = piece(() => import('./pictures-note.tsx').then((module) => module.PicturesNote))

/** Sends what waits of photographs and says how many do, once the page stands: nobody waits for that to read a step. */
export function LatePicturesNote() {
  return (
    <Afterwards>
      <Piece of={PICTURES_NOTE} give={{}} meanwhile={null} />
    </Afterwards>
  )
}

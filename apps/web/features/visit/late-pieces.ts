import { PICTURES_NOTE } from '@/client/photographs/late-pictures-note'
import { piece } from '@/client/piece'

/** Where photographs are taken, what sends them and says how many wait comes along: the signal may be gone before that comes by itself. */
async function withNote<T>(part: Promise<T>): Promise<T> {
  await PICTURES_NOTE.bring().catch(() => {})
  return part
}

/** What the bar at the foot opens. */
export const PANEL = piece(() => import('./visit-panel.tsx').then((module) => module.VisitPanel))

/** What the page turns into when an answer ends the work. */
export const SAFE_ENDING = piece(() => withNote(import('./safe-ending-page.tsx')).then((module) => module.SafeEndingPage))

/** Taking photographs, at the steps that ask for some. */
export const PHOTOGRAPHS = piece(() => withNote(import('@/client/photographs/photograph-part')).then((module) => module.PhotographPart))

/** The closing form, which asks for much that no step does. */
export const CLOSE_OUT = piece(() => withNote(import('./close-out-form.tsx')).then((module) => module.CloseOutForm))

/** To whom the report of a closed visit can be mailed. */
export const SEND_REPORT = piece(() => import('@/client/send-report').then((module) => module.SendReport))

/** The tank to scale. */
export const DRAWING = piece(() => import('./visit-drawing.tsx').then((module) => module.VisitDrawing))

import { piece } from '@/client/piece'

/** What the bar at the foot opens. */
export const PANEL = piece(() => import('./visit-panel.tsx').then((module) => module.VisitPanel))

/** What the page turns into when an answer ends the work. */
export const SAFE_ENDING = piece(() => import('./safe-ending-page.tsx').then((module) => module.SafeEndingPage))

/** Taking photographs, at the steps that ask for some. */
export const PHOTOGRAPHS = piece(() => import('@/client/photographs/photograph-part').then((module) => module.PhotographPart))

/** The closing form, which asks for much that no step does. */
export const CLOSE_OUT = piece(() => import('./close-out-form.tsx').then((module) => module.CloseOutForm))

/** To whom the report of a closed visit can be mailed. */
export const SEND_REPORT = piece(() => import('@/client/send-report').then((module) => module.SendReport))

/** The tank to scale. */
export const DRAWING = piece(() => import('./visit-drawing.tsx').then((module) => module.VisitDrawing))

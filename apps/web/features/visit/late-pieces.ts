import { piece } from '@/client/piece'

/** The closing form, which asks for much that no step does. */
export const CLOSE_OUT = piece(() => import('./close-out-form.tsx').then((module) => module.CloseOutForm))

/** The tank to scale. */
export const DRAWING = piece(() => import('./visit-drawing.tsx').then((module) => module.VisitDrawing))

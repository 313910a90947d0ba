import { piece } from '@/client/piece'

/** How the valve should be set: what works it out is as large as a page. */
export const CARD = piece(() => import('./visit-card.tsx').then((module) => module.VisitCard))

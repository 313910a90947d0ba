import type { jobState as english } from '../en/job-state.ts'
import type { Translation } from '../translation.ts'

export const jobState: Translation<typeof english> = {
  offered: 'ofrecido',
  booked: 'programado',
  'under-way': 'en curso',
  closed: 'cerrado',
  'called-off': 'cancelado',
  proposed: 'propuesto',
  held: 'en espera',
}

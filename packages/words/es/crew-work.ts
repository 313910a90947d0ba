import type { crewWork as english } from '../en/crew-work.ts'
import type { Translation } from '../translation.ts'

export const crewWork: Translation<typeof english> = {
  companyHours: 'el horario de la empresa',
  noBreaks: 'ninguna fija',
  break: '{length} entre {from} y {until}',
  allWork: 'todo trabajo',
  lightWork: 'trabajo ligero, sin válvulas',
  lifting: 'cargas pesadas',
  license: 'licencia de plomería',
  goneValve: 'una válvula que ya no está en la lista',
  openEnd: 'desde el {day} hasta nuevo aviso',
}

import type { today as english } from '../en/today.ts'
import type { Translation } from '../translation.ts'

export const today: Translation<typeof english> = {
  title: 'Trabajo de hoy',
  allCrews: 'Usted no está en ninguna hoja del día, por eso ve las visitas de todas las cuadrillas.',
  loading: 'Cargando el trabajo de hoy…',
  none: 'No hay visitas hoy',
  noneYet: 'La oficina pone visitas en su hoja del día. Aparecen aquí automáticamente.',
  left: 'Usted empezó una visita en {site} que ya no está en su hoja. Termínela aquí para que lo hecho cuente.',
  leftOpen: 'Abrir la visita',
  finished: 'Terminadas',
  tomorrow: 'Mañana',
  ahead: 'La semana que viene',
  directions: 'Cómo llegar',
  directionsTo: 'Cómo llegar a {site}',
  whichTank: '¿Qué tanque?',
  whatsWrong: '¿Qué falla?',
  until: 'a {until}',
  sizeUnknown: 'tamaño del tanque no registrado',
  withPeople: 'con {people}',
  alone: 'solo',
}

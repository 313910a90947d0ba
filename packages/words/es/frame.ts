import type { frame as english } from '../en/frame.ts'
import type { Translation } from '../translation.ts'

export const frame: Translation<typeof english> = {
  closing: 'Su empresa se está cerrando. Todo se borra el {day}.',
  takeBack: 'Deshacer el cierre',
}

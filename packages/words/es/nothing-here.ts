import type { nothingHere as english } from '../en/nothing-here.ts'
import type { Translation } from '../translation.ts'

export const nothingHere: Translation<typeof english> = {
  title: 'No hay nada en esta dirección',
  why: 'El enlace puede ser antiguo o estar mal escrito, o se quitó lo que mostraba. No se cambió nada.',
  sentLink: 'Si una empresa le envió este enlace, llámela y pida uno nuevo.',
  home: 'Ir a la primera página',
}

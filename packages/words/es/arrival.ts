import type { arrival as english } from '../en/arrival.ts'
import type { Translation } from '../translation.ts'

export const arrival: Translation<typeof english> = {
  title: 'Elija un horario',
  none: 'Aún no eligió un horario. Marque uno y presione Elegir este horario.',
  late: 'Ese horario ya no está disponible. No se cambió nada. Esto es lo que queda libre.',
  weCome: 'Llegaremos el <strong>{day}</strong>, entre las {from} y las {until}.',
  clearPath: 'Por favor, deje libre el paso hasta el ablandador.',
  toChange: '¿Necesita otro horario? Llame al {phone}.',
  toChangeUs: '¿Necesita otro horario? Llámenos.',
  addToCalendar: 'Agregar al calendario',
  when: '¿Cuándo podemos ir?',
  heldUntil: 'Le guardamos estos horarios hasta el {day}, {clock}.',
  weArrive: 'Llegamos entre las {from} y las {until}.',
  choose: 'Elegir este horario',
  noneWork: '¿Ninguno le sirve? Llame al {phone}. No se agenda nada hasta que usted elija.',
  noneWorkUs: '¿Ninguno le sirve? Llámenos. No se agenda nada hasta que usted elija.',
  movedOrCanceled: 'La visita que eligió se cambió o se canceló.',
  noLongerHeld: 'Ya no guardamos estos horarios.',
  callForAnother: 'Por favor, llame al {phone} y buscamos otro horario.',
  callUsForAnother: 'Por favor, llámenos y buscamos otro horario.',
}

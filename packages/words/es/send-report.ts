import type { sendReport as english } from '../en/send-report.ts'
import type { Translation } from '../translation.ts'

export const sendReport: Translation<typeof english> = {
  open: 'Enviar el informe por correo',
  title: 'Enviar el informe de servicio por correo',
  lead: 'Va como PDF, en su idioma, y se guarda tal como se envió.',
  loading: 'Cargando los contactos…',
  nobody: 'No hay ningún contacto de quien tenía este sitio ese día. Agregue uno en el sitio, con su correo.',
  to: 'Enviar a {name}',
  coming:
    '{count, plural, one {Aún viene 1 foto de una tableta y no estaría} other {Aún vienen # fotos de una tableta y no estarían}} en el informe.',
  asSent: 'Tal como se envió (PDF)',
  'why/no-mail': 'No hay servidor de correo, así que no se puede enviar nada. Imprima el PDF y entréguelo.',
  'why/no-address': 'No hay correo en el registro. Agréguelo en el sitio y luego envíe.',
  'why/came-back': 'El correo a {email} regresó. Corrija la dirección en el sitio y luego envíe.',
  'why/no-consent': 'No han aceptado recibir correo. Pregúnteles, anótelo en el sitio y luego envíe.',
  'why/sent': 'Ya tienen este informe, o va en camino. Nada se envía dos veces.',
  'state/drafted': 'Borrador',
  'state/approved': 'Listo para enviar',
  'state/held': 'En espera',
  'state/sending': 'Enviando…',
  'state/sent': 'Enviado {at} a {address}',
  'state/bounced': 'Regresó de {address}',
  'state/refused': 'El servidor de correo lo rechazó. Vea los mensajes por revisar.',
  'state/uncertain': 'No se sabe si se envió. Vea los mensajes por revisar.',
  'state/withdrawn': 'Retirado antes de enviarse',
}

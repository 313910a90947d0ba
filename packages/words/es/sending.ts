import type { sending as english } from '../en/sending.ts'
import type { Translation } from '../translation.ts'

export const sending: Translation<typeof english> = {
  waiting: 'Por enviar ({count})',
  noSignal:
    'Sin señal. {count, plural, one {1 dato está guardado aquí y se envía solo} other {# datos están guardados aquí y se envían solos}}.',
  sendingNow: 'Enviando {count, plural, one {1 dato} other {# datos}}…',
  sendNow: 'Enviar ahora',
  signIn: 'Inicie sesión otra vez para enviar {count, plural, one {1 dato} other {# datos}}. Siguen guardados aquí.',
  toSignIn: 'Iniciar sesión',
  noAccess:
    'Su acceso aquí terminó. {count, plural, one {1 dato está guardado} other {# datos están guardados}} en esta tableta; llame a la oficina.',
  otherCompany: 'Vuelva a esta empresa para enviar {count, plural, one {1 dato} other {# datos}}.',
  otherPerson:
    'Ahora hay otra persona con la sesión iniciada aquí. {count, plural, one {1 dato suyo está guardado} other {# datos suyos están guardados}} aquí; inicie sesión usted para enviar.',
  cannotKeep: 'Esta tableta no puede guardar lo que escribe. Quédese en esta página hasta que se envíe.',
  notSent: 'No se guardó ni se pudo enviar. Lo que escribió sigue en esta página; inténtelo otra vez con conexión.',
  told: '{site}: la oficina tiene su registro, pero no lo pudo recibir. {reason}',
  heard: 'Entendido',
  stuck:
    '{count, plural, one {1 dato no se puede enviar} other {# datos no se pueden enviar}}. Llame a la oficina; quedan en esta tableta.',
  asOf: 'Sin conexión. Esto es de las {time}.',
  leaving: 'Se envía lo pendiente y después se cierra la sesión…',
  leaveTitle: 'Falta enviar',
  leaveText:
    '{waiting, plural, =0 {} one {1 dato espera su envío. } other {# datos esperan su envío. }}{drafts, plural, =0 {} one {1 visita no está terminada. } other {# visitas no están terminadas. }}Si los guarda, esperan a que usted inicie sesión aquí otra vez. Nadie más los ve.',
  leaveKeep: 'Guardar para mi próxima sesión',
  leaveThrow: 'Desecharlos',
  emptyTitle: 'Todavía no hay nada guardado aquí',
  emptyText: 'Abra la aplicación una vez con conexión e inicie sesión. Después, el trabajo de hoy y de mañana está aquí también sin ella.',
  cancel: 'Cancelar',
}

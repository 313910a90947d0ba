import type { letter as english } from '../en/letter.ts'
import type { Translation } from '../translation.ts'

export const letter: Translation<typeof english> = {
  subject: 'La resina de su ablandador de agua en {site}',
  dear: 'Estimado(a) {name}:',
  hello: 'Buen día:',
  old: 'La resina de su ablandador de agua en {site} ya está vieja. La resina gastada deja pasar agua dura y puede deshacerse.',
  chloramineSince: 'El agua de su localidad pasó a cloramina en {year}. La cloramina gasta la resina más rápido.',
  chloramine: 'El agua de su localidad lleva cloramina, que gasta la resina más rápido.',
  chlorine: 'Su agua lleva cloro, que gasta la resina más rápido.',
  iron: 'Su agua lleva hierro, que gasta la resina más rápido.',
  lived: 'Su resina lleva unos {lived} de los {likely, plural, one {# año} other {# años}} que probablemente dure.',
  outlived: 'Su resina tiene unos {lived, plural, one {# año} other {# años}}. Casi ninguna dura más.',
  dueBefore: 'Le sugerimos cambiar la resina antes de {month}.',
  dueNow: 'Puede fallar en cualquier momento. Le sugerimos cambiarla pronto.',
  again: 'Ya le escribimos sobre esto. Todavía no hay nada agendado.',
  forecast:
    'Es un pronóstico por su edad y por su agua, no una medición. Si algo cambió, o si otros trabajaron en el ablandador, díganoslo por favor.',
  answer: 'Por favor llame al {phone} para elegir un día. Si prefiere no saber de esto, díganoslo y no insistiremos.',
  answerHere: 'Responda aquí: {link}',
  shortLink: 'Responda: {link}',
  answerUs: 'Por favor llámenos para elegir un día. Si prefiere no saber de esto, díganoslo y no insistiremos.',
  shortBefore: '{company}: la resina de su ablandador en {site} probablemente habrá que cambiarla antes de {month}.',
  shortNow: '{company}: la resina de su ablandador en {site} probablemente habrá que cambiarla pronto.',
  shortCall: 'Llame al {phone}.',
  callAbout: 'Llamar a {name} por el ablandador en {site}',
  callSomebodyAbout: 'Llamar por el ablandador en {site}',
  appointment: 'Llegamos entre las {from} y las {until}. Por favor deje libre el paso al ablandador.',
}

import type { letter as english } from '../en/letter.ts'
import type { Translation } from '../translation.ts'

export const letter: Translation<typeof english> = {
  subject: 'La resina de su ablandador de agua en {site}',
  dear: 'Estimado(a) {name}:',
  hello: 'Buen día:',
  dueBetween:
    'La resina de su ablandador de agua en {site} ya está vieja. Probablemente habrá que cambiarla entre {from} y {until}. La resina gastada deja pasar agua dura y puede deshacerse.',
  dueBefore:
    'La resina de su ablandador de agua en {site} ya está vieja. Probablemente habrá que cambiarla antes de {until}. La resina gastada deja pasar agua dura y puede deshacerse.',
  dueSoon:
    'La resina de su ablandador de agua en {site} ya está vieja. Probablemente habrá que cambiarla pronto. La resina gastada deja pasar agua dura y puede deshacerse.',
  forecast:
    'Es un pronóstico por su edad y por su agua, no una medición. Si algo cambió, o si otros trabajaron en el ablandador, díganoslo por favor.',
  answer:
    'Responda a este mensaje o llame al {phone} para elegir un día. Si prefiere no saber de nosotros sobre esto, díganoslo y no insistiremos.',
  answerUs:
    'Responda a este mensaje o llámenos para elegir un día. Si prefiere no saber de nosotros sobre esto, díganoslo y no insistiremos.',
  appointment: 'Llegamos entre las {from} y las {until}. Por favor deje libre el paso al ablandador.',
}

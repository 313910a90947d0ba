import type { photographs as english } from '../en/photographs.ts'
import type { Translation } from '../translation.ts'

export const photographs: Translation<typeof english> = {
  'kind/label': 'Etiqueta',
  'kind/as-found': 'Como estaba',
  'kind/old-bed': 'Lecho viejo',
  'kind/as-left': 'Como quedó',
  'refused/name': 'Una firma lleva el nombre de quien firmó, y nada más lo lleva. No se guardó nada; firme de nuevo.',
  'refused/tooMany': 'Esta visita ya tiene {most} imágenes, lo más que cabe. Esta no se guardó.',
  'refused/otherBytes': 'La imagen llegó dañada y no se guardó. Se envía de nuevo desde el principio.',
  'refused/offset': 'La imagen sigue en otro punto. Nada se guardó dos veces; se sigue enviando desde ahí.',
}

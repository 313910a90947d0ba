import type { proof as english } from '../en/proof.ts'
import type { Translation } from '../translation.ts'

export const proof: Translation<typeof english> = {
  title: 'Fotos e informes',
  loading: 'Cargando las fotos',
  none: 'Las fotos y el informe de servicio aparecen aquí después de una visita.',
  report: 'Informe de servicio (PDF)',
  coming: '{count, plural, one {1 imagen viene} other {# imágenes vienen}} todavía de una tableta.',
  signature: 'Firma',
  signatureOf: 'Firma de {name}',
  signed: 'Firmado',
}

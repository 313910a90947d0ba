import type { whom as english } from '../en/whom.ts'
import type { Translation } from '../translation.ts'

export const whom: Translation<typeof english> = {
  noPhone: 'sin teléfono',
  noPhoneRecorded: 'No hay teléfono registrado.',
  noCustomer: 'Sin cliente',
  noCustomerNow: 'Este sitio no tiene cliente ahora.',
  roleFor: '{role}, por {customer}',
  call: 'Llamar a {phone}',
  or: 'o <phone></phone>',
  notCalled: 'Pidió que no lo llamen.',
}

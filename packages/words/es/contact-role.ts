import type { contactRole as english } from '../en/contact-role.ts'
import type { Translation } from '../translation.ts'

export const contactRole: Translation<typeof english> = {
  payer: 'Quien paga',
  occupier: 'Ocupante',
  landlord: 'Propietario',
  'key-holder': 'Quien tiene la llave',
}

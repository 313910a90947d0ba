import type { endCause as english } from '../en/end-cause.ts'
import type { Translation } from '../translation.ts'

export const endCause: Translation<typeof english> = {
  worn: 'Gastado',
  'iron-fouled': 'Ensuciado por hierro',
  'beads-lost': 'Perlas perdidas (distribuidor roto)',
  oxidised: 'Dañado por oxidante (perlas blandas, hinchadas)',
  'tank-cracked': 'Tanque congelado o agrietado',
  'removed-for-convenience': 'Sacado antes de tiempo',
  unknown: 'No se sabe',
}

import type { hazard as english } from '../en/hazard.ts'
import type { Translation } from '../translation.ts'

export const hazard: Translation<typeof english> = {
  pressure: 'Presión',
  electricity: 'Electricidad',
  lifting: 'Carga pesada',
  chemical: 'Químico',
  water: 'Agua',
  slip: 'Resbaloso',
  refer: 'Pare y derive',
}

import type { unitWord as english } from '../en/unit-word.ts'
import type { Translation } from '../translation.ts'

export const unitWord: Translation<typeof english> = {
  pails: 'baldes',
  people: 'personas',
  days: 'días',
  rebeds: 'cambios',
  notices: 'avisos',
  bag: 'bolsas',
  piece: 'piezas',
  set: 'juegos',
}

import type { bedFacts as english } from '../en/bed-facts.ts'
import type { Translation } from '../translation.ts'

export const bedFacts: Translation<typeof english> = {
  sizeUnknown: 'tamaño del tanque no conocido',
  grain: '{count} granos',
  by: 'hasta {day}',
  sinceOrLater: 'desde {day} o después',
  years: '{from} a {to}',
}

import type { factSource as english } from '../en/fact-source.ts'
import type { Translation } from '../translation.ts'

export const factSource: Translation<typeof english> = {
  visit: 'visita {day}',
  'close-out': 'cierre de visita {day}',
  link: 'dicho por el enlace {day}',
  call: 'dicho por teléfono, {day}',
  label: 'leído en el equipo, {day}',
  measured: 'medido, {day}',
  papers: 'de los papeles de la empresa, {day}',
  importLine: 'archivo {file}, línea {line}',
  importList: 'archivo {file}, así hasta {day}',
}

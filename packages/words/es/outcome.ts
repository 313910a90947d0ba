import type { outcome as english } from '../en/outcome.ts'
import type { Translation } from '../translation.ts'

export const outcome: Translation<typeof english> = {
  done: 'Hecho',
  'made-safe': 'Dejado seguro en bypass, hay que volver',
  'left-as-found': 'Dejado como se encontró, hay que volver',
  'no-access': 'Sin acceso',
  'bed-not-at-fault': 'La falla no era el lecho',
  condemned: 'No apto',
}

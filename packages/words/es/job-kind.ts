import type { jobKind as english } from '../en/job-kind.ts'
import type { Translation } from '../translation.ts'

export const jobKind: Translation<typeof english> = {
  rebed: 'Cambio de lecho',
  'annual-visit': 'Visita anual',
  cleaning: 'Limpieza',
  inspection: 'Inspección',
  repair: 'Reparación',
  installation: 'Instalación',
  exchange: 'Cambio de tanque',
  delivery: 'Entrega',
  'warranty-return': 'Visita de garantía',
  emergency: 'Emergencia',
}

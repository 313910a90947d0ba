import type { pageTitle as english } from '../en/page-title.ts'
import type { Translation } from '../translation.ts'

export const pageTitle: Translation<typeof english> = {
  job: 'Trabajo',
  newJob: 'Agregar un trabajo',
  packingList: 'Lista de empaque',
  plan: 'Plan',
  site: 'Sitio',
  bed: 'Lecho',
  choice: 'Opciones de cambio, quién',
  importFile: 'Importar un archivo',
  supply: 'Suministro de agua',
  newTest: 'Anotar una prueba de agua',
  card: 'Tarjeta de ajustes',
  visit: 'Visita',
}

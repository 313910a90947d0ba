import type { firstRecords as english } from '../en/first-records.ts'
import type { Translation } from '../translation.ts'

export const firstRecords: Translation<typeof english> = {
  importList: 'Importar su lista de clientes',
  addSite: 'Agregar un sitio',
  start: 'Empiece con sus clientes y sus ablandadores. El pronóstico sale en segundos.',
  officeAdds: 'La oficina agrega los clientes y sus ablandadores.',
}

import type { find as english } from '../en/find.ts'
import type { Translation } from '../translation.ts'

export const find: Translation<typeof english> = {
  label: 'Buscar',
  placeholder: 'Nombre, calle, teléfono o tanque',
  closeSearch: 'Cerrar la búsqueda',
  people: 'Personas',
  addresses: 'Direcciones',
  tanks: 'Tanques',
  jobs: 'Trabajos',
  pages: 'Páginas',
  noCustomer: 'Sin cliente',
  none: 'Sin resultados.',
  results: '{count, plural, one {1 resultado} other {# resultados}}.',
  near: 'Nada exacto. Parecidos:',
  nearResults: 'Nada exacto. {count, plural, one {1 resultado parecido} other {# resultados parecidos}}.',
  nothing: 'No se encontró nada para «{text}». Pruebe con menos letras, la calle o los últimos números del teléfono.',
  stateOn: '{state} {day}',
}

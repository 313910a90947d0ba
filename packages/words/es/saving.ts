import type { saving as english } from '../en/saving.ts'
import type { Translation } from '../translation.ts'

export const saving: Translation<typeof english> = {
  save: 'Guardar',
  saving: 'Guardando',
  cancel: 'Cancelar',
  edit: 'Editar',
  kept: 'Lo que escribió sigue en el formulario.',
  fact: 'Dato',
  theirs: 'Lo de ellos',
  yours: 'Lo suyo',
  same: 'Sus valores son iguales a los de ellos, así que no se pierde nada suyo.',
  useTheirs: 'Usar lo de ellos',
  keepMine: 'Dejar lo mío',
  nothing: 'nada',
  yes: 'sí',
  no: 'no',
}

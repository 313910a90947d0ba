import type { account as english } from '../en/account.ts'
import type { Translation } from '../translation.ts'

export const account: Translation<typeof english> = {
  goTo: 'Ir a {company}',
  asRole: 'como {role}',
  owner: 'dueño',
  dispatcher: 'despachador',
  technician: 'técnico',
  language: 'Idioma',
  companyLanguage: 'El de su empresa',
  unreviewed: '{language} (aún no revisado por un técnico)',
  slashKey: 'La tecla / abre la búsqueda',
  yourAccount: 'Su cuenta',
  signOut: 'Cerrar sesión',
}

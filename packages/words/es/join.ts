import type { join as english } from '../en/join.ts'
import type { Translation } from '../translation.ts'

export const join: Translation<typeof english> = {
  join: 'Unirse a {company}',
  joinCompany: 'Unirse a su empresa',
  joining: 'Uniéndose',
  invited: 'Le invitan como {role, select, owner {propietario} dispatcher {coordinador} other {técnico}}.',
  signedInAs: 'Su cuenta es {name} ({email}). Se le agrega {company}.',
  haveOne: '¿Ya tiene cuenta aquí?',
  signInFirst: 'Entre primero',
  name: 'Su nombre',
  email: 'Correo',
  emailFixed: 'El enlace se envió a esta dirección',
  emailHint: 'Con él entra',
  password: 'Contraseña',
  newPassword: 'Contraseña nueva',
  passwordHint: 'Al menos 10 caracteres; lo mejor, tres o cuatro palabras sin relación',
  setPassword: 'Elija una contraseña nueva',
  othersEnd: 'Se cierran todos sus otros dispositivos.',
  savePassword: 'Guardar la contraseña',
  saving: 'Guardando',
  refused: 'Este enlace no funciona',
  toSignIn: 'Ir a la entrada',
  unreachable: 'No hay conexión con el servidor. Lo que escribió sigue aquí; inténtelo de nuevo cuando haya señal.',
}

import type { signIn as english } from '../en/sign-in.ts'
import type { Translation } from '../translation.ts'

export const signIn: Translation<typeof english> = {
  title: 'Iniciar sesión',
  lead: 'Cada ablandador que atiende la empresa, qué le hace el agua y cuándo fallará su lecho.',
  email: 'Correo electrónico',
  password: 'Contraseña',
  signIn: 'Iniciar sesión',
  signingIn: 'Entrando',
  passkey: 'Entrar con una llave de acceso',
  passkeyStopped: 'Su dispositivo no inició la sesión. Intente otra vez, o use su contraseña.',
  passkeyGone: 'Aquí no se conoce esta llave; quizá se quitó. Entre con su contraseña.',
  code: 'Código',
  codeHint: 'Los seis dígitos de su aplicación, o uno de sus códigos de reserva',
  codeLead: 'Un paso más: su código.',
  wrongCode: 'Este código no es correcto o ya no vale.',
  forgotten: '¿Olvidó su contraseña?',
  wrong: 'Correo o contraseña incorrectos.',
  otherAddress: 'Esta página se abrió con una dirección distinta de la que atiende el servidor.',
  notNow: 'El servidor no pudo iniciar su sesión en este momento.',
  unreachable: 'No hay conexión con el servidor.',
  kept: 'Su correo sigue en el formulario: revise ambos e intente otra vez.',
}

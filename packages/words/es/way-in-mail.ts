import type { wayInMail as english } from '../en/way-in-mail.ts'
import type { Translation } from '../translation.ts'

export const wayInMail: Translation<typeof english> = {
  hello: 'Hola, {name}:',
  helloYou: 'Hola:',
  invitation: '{by} le invita a {company}',
  'invitation/why': '{by} le agregó a {company} en Rebed Almanac. Abra este enlace para elegir una contraseña y entrar:',
  'invitation/else': 'El enlace sirve una vez, durante siete días. Si no conoce {company}, no haga caso de este mensaje.',
  password: 'Elija una contraseña nueva',
  'password/why': 'Abra este enlace para elegir una contraseña nueva para Rebed Almanac:',
  'password/else':
    'El enlace sirve una vez, durante 24 horas. Si no lo pidió, no haga caso de este mensaje: su contraseña sigue como está.',
  setUp: 'Cree su empresa',
  'setUp/why': 'Abra este enlace para crear su empresa en Rebed Almanac:',
  'setUp/else': 'El enlace sirve una vez, durante tres días. Si no lo pidió, no haga caso de este mensaje.',
  newEmail: 'Confirme su correo nuevo',
  'newEmail/why': 'Abra este enlace para entrar a Rebed Almanac con esta dirección desde ahora:',
  'newEmail/else': 'El enlace sirve una vez, durante 24 horas. Si no lo pidió, no haga caso de este mensaje.',
  emailChanged: 'Su correo cambió',
  'emailChanged/why':
    'Desde ahora se entra a su cuenta de Rebed Almanac con otra dirección. Si no fue usted, dígaselo enseguida a un dueño de su empresa.',
}

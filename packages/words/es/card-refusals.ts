import type { cardRefusals as english } from '../en/card-refusals.ts'
import type { Translation } from '../translation.ts'

export const cardRefusals: Translation<typeof english> = {
  noTank: 'No se saben el diámetro y la altura del tanque sin la válvula; mídalos en el ablandador.',
  doesNotFit: 'La resina y la grava no caben en este tanque: revise el volumen de resina, la grava y el tamaño del tanque.',
  noHardness: 'No se sabe la dureza del agua cruda; pruébela antes del ablandador.',
  badHardness: 'Una dureza de {value} gpg está fuera de 0 a 250; pruebe otra vez, o revise la unidad.',
  badMetals: 'El hierro y el manganeso deben estar entre 0 y 100 mg/L; revise el dato y su unidad.',
  softAlready: 'El agua no tiene dureza que quitar, así que no hay nada que ajustar. Pruebe el agua cruda otra vez.',
  spent: 'Por su edad a este lecho no le queda capacidad. Cambie el lecho antes de cambiar ajustes.',
  colderWarmer: 'El agua más fría ({coldest} °F) estaría más caliente que la más cálida ({warmest} °F); revise cuál es cuál.',
  'bad/coldestF': 'El agua más fría de {value} °F está fuera de {least} a {most} °F; mídala otra vez en el ablandador.',
  'bad/warmestF': 'El agua más cálida de {value} °F está fuera de {least} a {most} °F; mídala otra vez en el ablandador.',
  'bad/usualF': 'La temperatura del agua de {value} °F está fuera de {least} a {most} °F; mídala otra vez en el ablandador.',
  'bad/backwashGpm': 'El retrolavado puesto de {value} gpm está fuera de {least} a {most} gpm; lea el control de flujo de la válvula.',
  'bad/fixtureUnits': 'La suma de unidades de mueble de {value} wsfu está fuera de {least} a {most} wsfu; cuente otra vez qué usa agua.',
  'bad/bedAgeYears': 'La edad del lecho de {value} años está fuera de {least} a {most} años; revise cuándo se puso.',
  'bad/dissolvedSolidsMgL': 'Los sólidos disueltos de {value} mg/L están fuera de {least} a {most} mg/L; revise el dato y su unidad.',
  'bad/people': 'El número de personas de {value} está fuera de {least} a {most}; revise el dato.',
  'bad/measuredGalDay': 'El agua usada de {value} gal al día está fuera de {least} a {most} gal al día; lea el medidor otra vez.',
  'bad/refillGpm': 'El flujo de rellenado de {value} gpm está fuera de {least} a {most} gpm; vea la válvula.',
  'bad/wantedLbFt3': 'La dosis de sal de {value} lb/ft³ está fuera de {least} a {most} lb/ft³; elija una entre 4 y 15.',
  'bad/mostLeakageMgL': 'La dureza que puede pasar, {value} mg/L, está fuera de {least} a {most} mg/L; revise el dato y su unidad.',
}

import type { ownerRebed as english } from '../en/owner-rebed.ts'
import type { Translation } from '../translation.ts'

export const ownerRebed: Translation<typeof english> = {
  'never/loosen':
    'Nunca afloje la válvula antes de que el drenaje se detenga en retrolavado: hasta entonces el tanque tiene toda la presión de la casa.',
  'never/unplug': 'Nunca desenchufe la válvula antes de que salga la presión: sin corriente no puede dejarla salir.',
  'never/tip-alone': 'Nunca vuelque ni cargue solo el tanque lleno.',
  'never/vacuum': 'Nunca vacíe ni aspire el tanque con su abertura cerrada: el vacío lo aplasta.',
  'never/raise-tube': 'Nunca suba el tubo mientras llena, y nunca deje la tapa puesta en él.',
  'never/tighten': 'Nunca apriete la válvula más de ¼ a ½ vuelta después de su asiento, ni con presión.',
  'never/mix': 'Nunca mezcle hipoclorito de sodio con limpiador de hierro: produce gas tóxico.',
  'never/beads': 'Nunca deje que lleguen perlas a un drenaje.',
  'never/patch': 'Nunca parche un tanque agrietado.',
  'refer/pipe': 'Trabajo de tubería que pide permiso o licencia donde está la casa.',
  'refer/stop': 'Una acometida de plomo, asbesto, un espacio angosto bajo el piso, un aviso de hervir el agua.',
  'refer/pressure': 'Presión arriba de 80 psi (5.5 bar): un regulador, y control de expansión donde el flujo no puede regresar.',
  'refer/bypass': 'Un bypass o una llave de paso que no cierra.',
  'refer/waste': 'A dónde puede ir la resina vieja: la norma local de residuos.',
  'law/no': 'La ley local pide una persona con licencia para este trabajo.',
  'law/ask': 'Pregunte a la autoridad local: ¿puede un dueño abrir la tubería de agua sin licencia?',
  'stop/yes':
    'Hay un motivo para parar y derivar: plomo, asbesto, un espacio angosto bajo el piso, un aviso de hervir el agua o un tanque agrietado.',
  'stop/ask': 'Pregunte por una línea de plomo, asbesto, un espacio angosto bajo el piso, un aviso de hervir el agua, un tanque agrietado.',
  'weight/ask': 'No se sabe el tamaño del tanque, ni por eso su peso: mídalo.',
  'weight/commercial': 'Un tanque así de ancho es trabajo comercial: lleno pesa {weight}.',
  'weight/mind': 'Lleno, el tanque pesa {weight}: vacíelo donde está, o vuélquelo entre dos personas.',
  lift: 'Una bolsa de {weight} levantada del piso tiene un índice de levantamiento de {index} (NIOSH 94-110; piso parejo y seco, sin escaleras): divídala, o levántela en equipo.',
  'helper/no': 'Una persona sola no puede: nadie vuelca solo el tanque lleno, ni sostiene solo el tubo mientras vierte.',
  'helper/ask': 'Pregunte si hay una segunda persona fuerte.',
  'access/hard': 'Escaleras o un lugar estrecho: resina mojada y un tanque ahí son para una cuadrilla.',
  'access/ask': 'Pregunte cómo se llega al ablandador: piso parejo, escaleras, un rincón estrecho.',
  'bypass/none': 'No hay bypass: el agua de la casa se corta en la llave principal, y conviene poner primero un bypass.',
  'bypass/leaks': 'El bypass tiene fuga: sin la válvula inunda el cuarto.',
  'bypass/ask':
    'Pregunte si hay bypass, y que se pruebe que cierra: con una llave abierta del lado del ablandador, el flujo debe apagarse.',
  'pressure/ask': 'Pregunte la presión del agua, o haga que la midan.',
  'pressure/high': 'La presión de {pressure} necesita primero un regulador, puesto por una persona con licencia.',
  valve: 'La válvula necesita corriente para dejar salir la presión: sigue enchufada hasta que el drenaje se detiene.',
  pipe: 'La tubería de metal puede ser la tierra de la casa: ponga un puente de unión antes de abrirla.',
  waste: 'De un pozo, la resina usada puede tener metales o radio: pregunte la norma local de residuos.',
}

import type { refusal as english } from '../en/refusal.ts'
import type { Translation } from '../translation.ts'

export const refusal: Translation<typeof english> = {
  closedAlready: 'Esta visita ya se había cerrado. Este segundo cierre no cambió nada.',
  calledOff:
    'La oficina canceló esta visita. No se cambió nada; lo que escribió sigue en esta tableta. Llame a la oficina: cuando la programe otra vez, la nueva visita se lo ofrece.',
  otherKind: 'Esta visita es de otro tipo de trabajo ({kind}). No se guardó nada; abra la visita otra vez.',
  incomplete: 'Al cierre le faltan datos, así que no se guardó nada. {missing}',
  amount: '{sentence} No se guardó nada.',
  notBooked: 'Esta visita está en otro estado ({state}), así que no se puede empezar. No se cambió nada.',
  startedCalledOff: 'La oficina canceló esta visita. Llame a la oficina antes de seguir.',
  otherPerson: 'Ahora hay otra persona con la sesión iniciada en este dispositivo. No se hizo nada; vuelva a cargar la página.',
  doneByOthers: 'Otra cuadrilla cerró este trabajo o está en él ahora.',
  numberUsed: 'Antes se recibió otro dato con este número.',
  secondDevice: 'Otro dispositivo cerró esta visita. Estos datos se escribieron en un segundo y no están registrados.',
  unreadable: 'Este dato tiene una forma que este servidor no conoce.',
  lost: '{count, plural, one {1 dato} other {# datos}} de esta tableta nunca llegaron.',
  landedCalledOff: 'La oficina había cancelado esta visita. La cuadrilla la hizo de todos modos, y queda registrada.',
  landedOtherCrew: 'Esta visita la hizo otra cuadrilla, no la programada. Queda registrada.',
  'code/invalid': 'Esto no se pudo leer, así que no se guardó nada.',
  'code/conflict': 'Esto no concuerda con lo registrado, así que no se cambió nada.',
  'code/unauthenticated': 'Su sesión no está abierta. No se cambió nada; inicie sesión e intente otra vez.',
  'code/forbidden': 'Su puesto no permite esto. No se cambió nada; pregunte al dueño de su empresa si le corresponde.',
  'code/not-found': 'No hay tal registro en esta empresa. No se cambió nada; regrese y ábralo desde la lista.',
  'code/version-conflict': 'Alguien cambió esto desde que usted lo abrió. Lo suyo no se guardó; vea las dos versiones y elija cuál queda.',
  'code/too-large': 'Se envió más de lo que se lee aquí. No se guardó nada; envíe menos cada vez.',
  'code/command-reused': 'Esto ya se había enviado con otro contenido. Queda la primera versión; cargue la página otra vez para verla.',
  'code/rate-limited': 'Llegaron demasiadas solicitudes de usted. Esta no cambió nada; espere un minuto e intente otra vez.',
  'code/unavailable':
    'El servidor no puede responder ahora, así que no se sabe si esto se guardó. Intente otra vez en un momento; nada se guarda dos veces.',
  'code/misconfigured': 'El servidor no está bien configurado. No se guardó nada; avise a quien lo atiende.',
  'code/unexpected': 'Algo falló de nuestro lado. No se guardó nada; intente otra vez y, si sigue igual, díganos el número de abajo.',
}

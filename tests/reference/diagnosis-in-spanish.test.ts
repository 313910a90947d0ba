import { diagnosisCautions } from '@almanac/words/en/diagnosis-cautions'
import { emergency } from '@almanac/words/en/emergency'
import { ownerRebed } from '@almanac/words/en/owner-rebed'
import { diagnosisCautions as spanishOfDiagnosis } from '@almanac/words/es/diagnosis-cautions'
import { emergency as spanishOfEmergency } from '@almanac/words/es/emergency'
import { ownerRebed as spanishOfOwner } from '@almanac/words/es/owner-rebed'
import { describe, expect, it } from 'vitest'

/** The cautions before a check, and what is said at once of beads at the taps: read side by side, as those of the procedures are. */
const AT_CHECKS: Record<keyof typeof diagnosisCautions, readonly (readonly [english: string, spanish: string])[]> = {
  overflow: [
    ['floods the floor', 'inunda el piso'],
    ['put the softener in bypass', 'ponga el ablandador en bypass'],
  ],
  'look-only': [
    ['no cover off', 'no quite ninguna cubierta'],
    ['wet hands or on a wet floor', 'manos mojadas ni sobre piso mojado'],
  ],
  'turn-slowly': [
    ['slowly', 'despacio'],
    ['Above 80 psi (5.5 bar)', 'Arriba de 80 psi (5.5 bar)'],
    ['a pressure regulator', 'un regulador de presión'],
  ],
  'poured-before': [
    ['Never mix bleach with iron cleaner', 'Nunca mezcle hipoclorito de sodio con limpiador de hierro'],
    ['toxic gas', 'gas tóxico'],
    ['poured into the brine tank before', 'echó antes en el tanque de salmuera'],
  ],
  'drain-takes-it': [
    ['standpipe or sump', 'tubo de descarga o el cárcamo'],
    ['before you start', 'antes de empezar'],
  ],
  'cover-on': [['while it is plugged in', 'mientras esté enchufada']],
  'bypass-first': [
    ['proven to hold', 'probado que cierra'],
    ['until the drain stops', 'hasta que el drenaje pare'],
    ['Nothing is opened while there is pressure', 'No se abre nada mientras hay presión'],
  ],
  'unplug-last': [
    ['only after the pressure is gone', 'solo cuando ya no hay presión'],
    ['without power the valve cannot let it out', 'sin corriente la válvula no puede dejarla salir'],
  ],
  'beads-roll': [
    ['roll underfoot', 'ruedan bajo los pies'],
    ['sweep before you walk', 'barra antes de caminar'],
  ],
  'rinse-between': [
    ['Never mix bleach with iron cleaner', 'Nunca mezcle hipoclorito de sodio con limpiador de hierro'],
    ['toxic gas', 'gas tóxico'],
    ['Rinse one out fully before the other comes near', 'Enjuague uno por completo antes de acercar el otro'],
    ['air the room', 'ventile el cuarto'],
  ],
}

const AT_ONCE: readonly (readonly [key: keyof typeof emergency, english: string, spanish: string])[] = [
  ['say/bypass', 'stop valves on both sides', 'llaves de paso de los dos lados'],
  ['say/hot-water', 'Use no hot water', 'No use agua caliente'],
  ['say/hot-water', 'gas: pilot), then shut its cold inlet', 'gas: en piloto), luego cierre su entrada de agua fría'],
  ['say/appliances', 'washing machine, the dishwasher and the ice-maker', 'lavadora, el lavavajillas y la máquina de hielo'],
  ['say/aerators', 'Do not unscrew', 'No desenrosque todavía'],
  ['say/drinking', 'not poisonous, but do not drink', 'no son venenosas, pero no beba'],
  ['say/main', 'close the main stop valve', 'cierre la llave principal'],
  ['do/bypass', 'proven to hold', 'probado que cierra'],
  ['do/flush', 'from the main outwards, cold first', 'desde la llave principal hacia afuera, primero la fría'],
  ['do/screens', 'throw away its ice', 'tire su hielo'],
  ['do/heater', 'has no drain', 'no tiene drenaje'],
  ['do/stays', 'stays in bypass until', 'queda en bypass hasta'],
]

/** What nobody may do at a rebed, and what goes to a licensed person. */
const OWNER: readonly (readonly [key: keyof typeof ownerRebed, english: string, spanish: string])[] = [
  ['never/loosen', 'before the drain has stopped in backwash', 'antes de que el drenaje se detenga en retrolavado'],
  ['never/loosen', 'full house pressure', 'toda la presión de la casa'],
  ['never/unplug', 'before the pressure is out', 'antes de que salga la presión'],
  ['never/tip-alone', 'the full tank alone', 'solo el tanque lleno'],
  ['never/vacuum', 'with its opening closed', 'con su abertura cerrada'],
  ['never/vacuum', 'collapses', 'aplasta'],
  ['never/raise-tube', 'Never raise the tube while filling', 'Nunca suba el tubo mientras llena'],
  ['never/raise-tube', 'never leave the cap in it', 'nunca deje la tapa puesta'],
  ['never/tighten', 'beyond ¼ to ½', 'más de ¼ a ½'],
  ['never/tighten', 'nor under pressure', 'ni con presión'],
  ['never/mix', 'bleach with iron cleaner: it makes toxic gas', 'hipoclorito de sodio con limpiador de hierro: produce gas tóxico'],
  ['never/beads', 'into a drain', 'a un drenaje'],
  ['never/patch', 'Never patch a cracked tank', 'Nunca parche un tanque agrietado'],
  ['refer/pipe', 'permit or license', 'permiso o licencia'],
  [
    'refer/stop',
    'lead service line, asbestos, a crawl space, a boil-water notice',
    'plomo, asbesto, un espacio angosto bajo el piso, un aviso de hervir el agua',
  ],
  [
    'refer/pressure',
    'above 80 psi (5.5 bar): a regulator, and expansion control',
    'arriba de 80 psi (5.5 bar): un regulador, y control de expansión',
  ],
  ['refer/bypass', 'does not hold', 'no cierra'],
  ['refer/waste', 'local waste rule', 'norma local de residuos'],
]

describe('each caution', () => {
  it('of an owner, what nobody may do and what is referred stands in both languages', () => {
    for (const [key, inEnglish, inSpanish] of OWNER) {
      expect(ownerRebed[key]).toContain(inEnglish)
      expect(spanishOfOwner[key]).toContain(inSpanish)
    }
    const named = OWNER.map(([key]) => key)
    expect(Object.keys(ownerRebed).filter((key) => /^(never|refer)\//.test(key) && !named.includes(key as never))).toEqual([])
  })
  it.each(Object.entries(AT_CHECKS))('before a check, %s: hazard and way out stand in both languages', (key, pairs) => {
    for (const [inEnglish, inSpanish] of pairs) {
      expect(diagnosisCautions[key as keyof typeof diagnosisCautions]).toContain(inEnglish)
      expect(spanishOfDiagnosis[key as keyof typeof diagnosisCautions]).toContain(inSpanish)
    }
  })
  it('of beads at the taps, what is done at once stands in both languages', () => {
    for (const [key, inEnglish, inSpanish] of AT_ONCE) {
      expect(emergency[key]).toContain(inEnglish)
      expect(spanishOfEmergency[key]).toContain(inSpanish)
    }
    const named = AT_ONCE.map(([key]) => key)
    expect(Object.keys(emergency).filter((key) => /^(say|do)\//.test(key) && !named.includes(key as never))).toEqual([])
  })
})

import { sourceWords } from '@almanac/operations/shared/read-typed-facts'
import { sourceOn } from '@almanac/records/fact-source'
import { wordsIn } from '@almanac/words/words-in'
import { expect, test } from 'vitest'
import { sourceText } from './source-text.ts'

const say = (kept: string, locale: string) => sourceText(kept, { locale }, wordsIn(locale, 'factSource'))

// Left: what operations keep beside a fact (packages/operations, sourceOn).
test.each([
  [sourceOn('visit', '2026-03-04'), 'visit 4 Mar 2026', 'visita 4 mar 2026'],
  [sourceOn('close-out', '2026-03-04'), 'close-out 4 Mar 2026', 'cierre de visita 4 mar 2026'],
  [sourceOn('said by link', '2026-03-04'), 'said by link 4 Mar 2026', 'dicho por el enlace 4 mar 2026'],
  [sourceWords('call', '2026-03-04'), 'said on a call, 4 Mar 2026', 'dicho por teléfono, 4 mar 2026'],
  [sourceWords('label', '2026-03-04'), 'read off the unit, 4 Mar 2026', 'leído en el equipo, 4 mar 2026'],
  [sourceWords('measured', '2026-03-04'), 'measured, 4 Mar 2026', 'medido, 4 mar 2026'],
  [sourceWords('papers', '2026-03-04'), 'from company records, 4 Mar 2026', 'de los papeles de la empresa, 4 mar 2026'],
  ['import beds.csv line 3', 'import beds.csv, line 3', 'archivo beds.csv, línea 3'],
  ['import 2026 line 4.csv line 12', 'import 2026 line 4.csv, line 12', 'archivo 2026 line 4.csv, línea 12'],
  [
    sourceOn('import beds.csv, last right', '2026-03-04'),
    'import beds.csv, last right 4 Mar 2026',
    'archivo beds.csv, así hasta 4 mar 2026',
  ],
])('%s', (kept, english, spanish) => {
  expect([say(kept, 'en-GB'), say(kept, 'es-ES')]).toEqual([english, spanish])
})

test('what a person wrote stays as it is, and a day in it is written', () => {
  expect(say('the town’s report', 'es-ES')).toBe('the town’s report')
  expect(say('letter of 2026-03-04', 'es-ES')).toBe('letter of 4 mar 2026')
  for (const kept of ['visit 2026-02-30', '', 'constructor 2026-03', 'toString']) expect(say(kept, 'es-ES')).toBe(kept)
})

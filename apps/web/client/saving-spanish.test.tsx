import { wordsIn } from '@almanac/words/words-in'
import { expect, it } from 'vitest'
import { englishLeft } from '../../../tests/support/english-left.ts'
import { SPANISH, spanishScreen } from '../../../tests/support/spanish-screen.tsx'
import { ConflictNote } from './conflict-note.tsx'

const refusal = wordsIn(SPANISH, 'refusal')
const refused = (code: 'version-conflict' | 'forbidden', detail: object = {}) =>
  Object.assign(new Error(refusal(`code/${code}`)), { data: { code, detail } })

it('what stands between a form and its saving, is said in Spanish to a Spanish reader', () => {
  const detail = { current: { gravel: true, label: '' }, sent: { gravel: false, label: 'Taller' } }
  const note = (error: unknown) => (
    <ConflictNote
      key={String(error)}
      error={error}
      names={{ gravel: 'Grava', label: 'Nombre' }}
      onKeepMine={() => {}}
      onTakeTheirs={() => {}}
    />
  )
  const shown = spanishScreen('office', [
    note(refused('forbidden')),
    note(refused('version-conflict', detail)),
    note(refused('version-conflict')),
  ])
  for (const word of ['Lo de ellos', 'Lo suyo', 'nada', 'sí', 'Dejar lo mío', 'así que no se pierde nada suyo'])
    expect(shown).toContain(word)
  expect(shown).not.toMatch(/\b(Save|Saving|Cancel|Theirs|Yours|Keep|nothing|yes|Fact)\b/)
  expect(englishLeft(shown)).toEqual([])
})

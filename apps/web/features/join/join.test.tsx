import type { Language } from '@almanac/records/language'
import { messagesOf } from '@almanac/words/messages-of'
import type { ReactNode } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import { WordsProvider } from '@/client/words-provider'
import { AskByMail } from './ask-by-mail.tsx'
import { JoinByLink } from './join.tsx'
import { NewPassword } from './new-password.tsx'

/** A page as the browser first shows it, as text. */
const read = (language: Language, page: ReactNode) =>
  renderToStaticMarkup(
    <WordsProvider locale={language} timeZone="UTC" messages={messagesOf('public', language)}>
      {page}
    </WordsProvider>,
  )
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ')

const invited = { token: 'x', company: 'Weir Road Water', role: 'dispatcher' as const, name: 'Dell', email: null, signedIn: null }

test.each<[Language, ReactNode, string[]]>([
  ['en', <JoinByLink key="1" page={invited} />, ['Join Weir Road Water', 'invited as dispatcher', 'Your name', 'Sign in first']],
  ['es', <JoinByLink key="2" page={invited} />, ['Unirse a Weir Road Water', 'como despachador', 'Contraseña']],
  [
    'en',
    <JoinByLink key="3" page={{ ...invited, signedIn: { name: 'Ada Roe', email: 'ada@firm.example' } }} />,
    ['signed in as Ada Roe (ada@firm.example)', 'Weir Road Water is added to your sign-in'],
  ],
  ['es', <NewPassword key="4" page={{ refused: 'Gone.' }} />, ['Este enlace no funciona', 'Gone.', 'Ir a la entrada']],
  ['es', <NewPassword key="5" page={{ token: 'x' }} />, ['Elija una contraseña nueva', 'Guardar la contraseña']],
  ['en', <AskByMail key="6" purpose="password" may={false} />, ['Forgotten password', 'Ask an owner of your company']],
  ['en', <AskByMail key="7" purpose="set-up" may />, ['Set up a new company', 'Send the link']],
])('%s: %#', (language, page, said) => {
  const text = read(language, page)
  for (const words of said) expect(text).toContain(words)
})

import type { AddressInfo } from 'node:net'
import { SMTPServer } from 'smtp-server'

/** What the server says to one mail: a reply other than 250, or nothing any more. `after` runs once the mail is in its hands, before it answers. */
type Answer = { code: number } | 'hang-up' | undefined
type Options = {
  /** To the address of a recipient. */
  recipient?: (address: string) => Answer
  /** To the whole mail. */
  contents?: (address: string) => Answer
  /** Waited for with the mail kept and its answer not yet given. */
  before250?: () => Promise<void>
  /** Whoever sends must sign in with it. */
  password?: string
}

const replyError = (answer: { code: number }) => Object.assign(new Error('no'), { responseCode: answer.code })

/** A real mail server on this machine that keeps what it takes. */
export async function mailServer({ recipient, contents, before250, password }: Options = {}) {
  const taken: { to: string[]; text: string; raw: Buffer }[] = []
  const server = new SMTPServer({
    ...{ authOptional: password === undefined, allowInsecureAuth: true, disabledCommands: ['STARTTLS'], logger: false },
    onAuth: (auth, _session, done) => (auth.password === password ? done(null, { user: 'almanac' }) : done(new Error('no'))),
    onRcptTo({ address }, _session, done) {
      const answer = recipient?.(address)
      return answer && answer !== 'hang-up' ? done(replyError(answer)) : done()
    },
    onData(stream, session, done) {
      const parts: Buffer[] = []
      stream.on('data', (part: Buffer) => parts.push(part))
      stream.on('end', async () => {
        const to = session.envelope.rcptTo.map((one) => one.address)
        const answer = contents?.(to[0] ?? '')
        if (answer === 'hang-up') {
          for (const connection of server.connections) (connection as unknown as { close: () => void }).close()
          return
        }
        if (answer) return done(replyError(answer))
        // Long lines are broken with a sign that is no part of them: RFC 2045, 6.7 (5).
        const raw = Buffer.concat(parts)
        const text = raw.toString('utf8').replaceAll('=\r\n', '')
        taken.push({ to, text, raw })
        await before250?.()
        done()
      })
    },
  })
  server.on('error', () => undefined) // whoever hangs up on it is no news
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready))
  const { port } = server.server.address() as AddressInfo
  return { url: `smtp://127.0.0.1:${port}`, taken, close: () => new Promise<void>((closed) => server.close(() => closed())) }
}

import type { AddressInfo } from 'node:net'
import { SMTPServer } from 'smtp-server'

/** A real mail server on this machine that keeps what it takes; `refuse` has it take nothing. */
export async function mailServer({ refuse = false } = {}) {
  const taken: { to: string[]; text: string }[] = []
  const server = new SMTPServer({
    ...{ authOptional: true, disabledCommands: ['STARTTLS'], logger: false },
    onData(stream, session, done) {
      const parts: Buffer[] = []
      stream.on('data', (part: Buffer) => parts.push(part))
      stream.on('end', () => {
        if (refuse) return done(Object.assign(new Error('mailbox full'), { responseCode: 452 }))
        // Long lines are broken with a sign that is no part of them: RFC 2045, 6.7 (5).
        const text = Buffer.concat(parts).toString('utf8').replaceAll('=\r\n', '')
        taken.push({ to: session.envelope.rcptTo.map((one) => one.address), text })
        done()
      })
    },
  })
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready))
  const { port } = server.server.address() as AddressInfo
  return { url: `smtp://127.0.0.1:${port}`, taken, close: () => new Promise<void>((closed) => server.close(() => closed())) }
}

import http from 'node:http'
import https from 'node:https'
import { config } from '@almanac/runtime/config'
import type { Logger } from '@almanac/runtime/log'
import { PATIENCE_MS, type Posted, WHOLE_PATIENCE_MS } from './posted.ts'
import { dialable } from './text-number.ts'

export type Text = {
  /** The same each time this text is tried. */
  id: string
  /** As it stands on record; `locale` says how the company's region writes numbers. */
  to: string
  locale: string
  /** Whom it says it is from. */
  from: string
  text: string
}

/** Whether a text server is set up. */
export const textsWork = (): boolean => config().TEXT_URL !== undefined

type Answer = { status: number } | { status: null; begun: boolean }

/** Asks once, on a connection of its own: one that was kept open may be closed by the other side just as a text goes over it, and nobody would know. */
function ask(body: string, id: string): Promise<Answer> {
  const { TEXT_URL, TEXT_TOKEN } = config()
  if (!TEXT_URL) return Promise.resolve({ status: null, begun: false })
  const url = new URL(TEXT_URL)
  const secure = url.protocol === 'https:'
  return new Promise((done) => {
    let begun = false
    const request = (secure ? https : http).request(url, {
      ...{ method: 'POST', agent: false, timeout: PATIENCE_MS, signal: AbortSignal.timeout(WHOLE_PATIENCE_MS) },
      headers: {
        ...{ 'content-type': 'application/json', 'content-length': Buffer.byteLength(body), 'idempotency-key': id },
        authorization: `Bearer ${TEXT_TOKEN}`,
      },
    })
    // Nothing of the text goes over before this.
    request.on('socket', (socket) =>
      socket.once(secure ? 'secureConnect' : 'connect', () => {
        begun = true
      }),
    )
    request.on('response', (response) => {
      done({ status: response.statusCode ?? 0 })
      response.destroy()
    })
    request.on('timeout', () => request.destroy(new Error('the text server took too long')))
    request.on('error', () => done({ status: null, begun }))
    request.end(body)
  })
}

const has = (statuses: readonly number[], status: number) => statuses.includes(status)

/** What the answer, or its lack, says, by RFC 9110 (15.4 to 15.6) and docs/texts.md. */
function judge(answer: Answer): Posted {
  if (answer.status === null)
    return answer.begun
      ? { outcome: 'uncertain', reason: 'The connection to the text server broke while it took the message.' }
      : { outcome: 'later', reason: 'The text server didn’t answer.', wholeServer: true }
  const { status } = answer
  const reason = `The text server answered ${status}.`
  // 409: taken before, under the same id.
  if ((status >= 200 && status < 300) || status === 409) return { outcome: 'taken' }
  if (has([408, 425], status)) return { outcome: 'later', reason, wholeServer: false }
  // Too many, closed for now, or an address or token that is wrong: none of it is about this text.
  if (status < 400 || has([401, 403, 404, 405, 429, 503], status)) return { outcome: 'later', reason, wholeServer: true }
  return status < 500 ? { outcome: 'refused', reason } : { outcome: 'uncertain', reason }
}

/** Hands a text to the text server once, and says what came of it. Never throws for what the server does. */
export async function postText({ id, to, locale, from, text }: Text, log: Logger): Promise<Posted> {
  const number = dialable(to, locale)
  if (number === null) return { outcome: 'refused', reason: 'This isn’t a number that can be texted.' }
  const answer = await ask(JSON.stringify({ id, to: number, from, text }), id)
  const posted = judge(answer)
  if (posted.outcome !== 'taken') log.error({ status: answer.status, outcome: posted.outcome }, 'a text was not taken by the text server')
  return posted
}

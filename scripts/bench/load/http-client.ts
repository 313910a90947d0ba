import http from 'node:http'

/** Asks the served app as a browser would, over connections that stay open; 127.0.0.1 only. */
export type AppClient = {
  ask: (procedure: string, input: object) => Promise<{ json: unknown; bytes: number }>
  /** Sends a CSV file as a body. */
  upload: <A>(path: string, csv: string) => Promise<A>
  close: () => void
}

/** Signs in and answers a client that sends the session's cookie. */
export async function signIn(baseUrl: string, email: string, password: string): Promise<AppClient> {
  const url = new URL(baseUrl)
  const agent = new http.Agent({ keepAlive: true, maxSockets: 32 })
  const send = (path: string, body: object | string, headers: Record<string, string>) =>
    new Promise<{ status: number; cookies: string[]; text: string }>((resolve, reject) => {
      const payload = typeof body === 'string' ? body : JSON.stringify(body)
      const request = http.request(
        {
          host: '127.0.0.1',
          port: url.port,
          path,
          method: 'POST',
          agent,
          timeout: 300_000,
          headers: {
            host: url.host,
            origin: url.origin,
            'content-type': 'application/json',
            'content-length': Buffer.byteLength(payload),
            ...headers,
          },
        },
        (response) => {
          const parts: Buffer[] = []
          response.on('data', (part: Buffer) => parts.push(part))
          response.once('error', reject)
          response.once('end', () =>
            resolve({
              status: response.statusCode ?? 0,
              cookies: response.headers['set-cookie'] ?? [],
              text: Buffer.concat(parts).toString('utf8'),
            }),
          )
        },
      )
      request.once('error', reject)
      request.once('timeout', () => request.destroy(new Error(`${path} did not answer within five minutes.`)))
      request.end(payload)
    })

  const signed = await send('/api/auth/sign-in/email', { email, password }, {})
  if (signed.status !== 200) throw new Error(`Signing in as ${email} answered ${signed.status}: ${signed.text.slice(0, 300)}`)
  const cookie = signed.cookies.map((one) => one.split(';')[0]).join('; ')
  return {
    ask: async (procedure, input) => {
      const { status, text } = await send(`/api/rpc/${procedure}`, { json: input }, { cookie, 'x-csrf-token': 'orpc' })
      if (status !== 200) throw new Error(`${procedure} answered ${status}: ${text.slice(0, 300)}`)
      return { json: (JSON.parse(text) as { json: unknown }).json, bytes: text.length }
    },
    upload: async <A>(path: string, csv: string) => {
      const { status, text } = await send(path, csv, { cookie, 'content-type': 'text/csv', 'x-csrf-token': 'orpc' })
      if (status !== 201) throw new Error(`${path} answered ${status}: ${text.slice(0, 300)}`)
      return JSON.parse(text) as A
    },
    close: () => agent.destroy(),
  }
}

import pg from 'pg'

type Statement = { text: string; values?: unknown[] }

/** The statements that `read` sends through the app's own login, begin and commit among them, in their order. */
export async function recordStatements(read: () => Promise<unknown>): Promise<Statement[]> {
  await read() // the first call also opens a connection
  const statements: Statement[] = []
  const prototype = pg.Client.prototype as { query: (...args: unknown[]) => unknown }
  const original = prototype.query
  prototype.query = function (this: unknown, ...args: unknown[]) {
    const [first, values] = args as [string | Statement, unknown[] | undefined]
    statements.push(typeof first === 'string' ? { text: first, values } : { text: first.text, values: first.values })
    return original.apply(this, args)
  }
  try {
    await read()
  } finally {
    prototype.query = original
  }
  if (!statements.some(({ text }) => /set_config/.test(text)))
    throw new Error('No scoped transaction was seen: the comparison would be of something else.')
  return statements
}

/** The same statements at the same login on the plain driver, their rows turned into JSON. */
export function replayer(connectionString: string): {
  replay: (statements: readonly Statement[]) => Promise<number>
  close: () => Promise<void>
} {
  const pool = new pg.Pool({ connectionString, max: 10 })
  pool.on('error', () => {})
  return {
    replay: async (statements) => {
      const client = await pool.connect()
      try {
        let bytes = 0
        for (const { text, values } of statements) bytes += JSON.stringify((await client.query(text, values)).rows ?? []).length
        return bytes
      } finally {
        client.release()
      }
    },
    close: () => pool.end(),
  }
}

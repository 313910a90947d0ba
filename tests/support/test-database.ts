import { once } from 'node:events'
import net from 'node:net'
import { createInterface } from 'node:readline'
import { inject } from 'vitest'

declare module 'vitest' {
  interface ProvidedContext {
    testDatabasePort: number
  }
}

export type TestDatabase = {
  /** As the role that owns the tables and runs migrations; no superuser. */
  migrationUrl: string
  /** As the app: row security applies. */
  appUrl: string
  /** As sign-in. */
  identityUrl: string
  /** As the cluster's superuser, who passes by row security: to prepare and to inspect, never to exercise the app. */
  superUrl: string
}

let mine: Promise<TestDatabase> | undefined
let socket: net.Socket | undefined

/** The door keeps the database as long as this connection is open: until it is left, or this process ends. */
async function ask(): Promise<TestDatabase> {
  socket = net.connect(inject('testDatabasePort'), '127.0.0.1')
  await once(socket, 'connect')
  const [line] = (await once(createInterface({ input: socket }), 'line')) as [string]
  socket.unref()
  const answer = JSON.parse(line) as TestDatabase & { error?: string }
  if (answer.error) throw new Error(`no test database: ${answer.error}`)
  Object.assign(process.env, {
    DATABASE_URL: answer.appUrl,
    IDENTITY_DATABASE_URL: answer.identityUrl,
    MIGRATION_DATABASE_URL: answer.migrationUrl,
  })
  process.env.AUTH_SECRET ??= 'a secret that only tests use, and know'
  process.env.LOG_LEVEL ??= 'error'
  return answer
}

/**
 * A migrated, empty database of this test file's own, on a real PostgreSQL; made at the first call, dropped when the file is done.
 * The environment is set to it as well, so that the project's own configuration finds it.
 */
export function testDatabase(): Promise<TestDatabase> {
  mine ??= ask()
  return mine
}

/** Gives the database up, where the process goes on with another test file; whoever has connections to it closes them before. */
export function leaveTestDatabase(): void {
  socket?.destroy()
  mine = undefined
}

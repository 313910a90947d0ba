import { config } from '@almanac/runtime/config'
import { PrismaPg } from '@prisma/adapter-pg'
import { type Prisma, PrismaClient } from './generated/client.ts'

/** A transaction scoped to one company. Only `inCompany` and `runCommand` hand it out. */
export type Tx = Prisma.TransactionClient

/**
 * One process's connections at one login. Prisma reads several relations of a row at the same time, inside a transaction on its one connection: `pipeline` is pg's own
 * way to send a query while another is under way. Without it they wait in a queue that pg's next version no longer has, and refuses.
 */
function openClient(connectionString: string, poolSize: number): PrismaClient {
  return new PrismaClient({
    adapter: new PrismaPg({
      connectionString,
      max: poolSize,
      connectionTimeoutMillis: 10_000,
      pipeline: true,
    }),
  })
}

const held = globalThis as typeof globalThis & { almanacClients?: { app?: PrismaClient; identity?: PrismaClient } }
held.almanacClients ??= {}
const clients = held.almanacClients

/** The app's login; stays inside this package. Kept on the global object, so that a reloaded module does not open a second pool. */
export function appClient(): PrismaClient {
  clients.app ??= openClient(config().DATABASE_URL, config().DATABASE_POOL)
  return clients.app
}

/** The identity login: sign-in, sessions, memberships. For packages/identity only. */
export function identityClient(): PrismaClient {
  clients.identity ??= openClient(config().IDENTITY_DATABASE_URL, config().DATABASE_POOL)
  return clients.identity
}

/** Closes both pools, at the end of a process or a test file. */
export async function closeClients(): Promise<void> {
  await Promise.all([clients.app?.$disconnect(), clients.identity?.$disconnect()])
  clients.app = undefined
  clients.identity = undefined
}

import * as z from 'zod'
import { AppError } from './errors.ts'

const schema = z.object({
  DATABASE_URL: z.string().regex(/^postgres(ql)?:\/\//, 'must begin with postgresql://'),
  IDENTITY_DATABASE_URL: z.string().regex(/^postgres(ql)?:\/\//, 'must begin with postgresql://'),
  /** Where live changes are listened for; a direct address when DATABASE_URL leads through a pooler. */
  LIVE_DATABASE_URL: z
    .string()
    .regex(/^postgres(ql)?:\/\//, 'must begin with postgresql://')
    .optional(),
  AUTH_SECRET: z.string().min(32, 'must have 32 characters or more'),
  HOST: z.string().default('127.0.0.1'),
  PUBLIC_URL: z.url().default('http://localhost:3000'),
  DATABASE_POOL: z.coerce.number().int().min(1).max(200).default(10),
  LOG_LEVEL: z.enum(['debug', 'info', 'warn', 'error', 'silent']).default('info'),
  SIGN_IN_TRIES_PER_MINUTE: z.coerce.number().int().min(1).default(10),
  REQUESTS_PER_MINUTE: z.coerce.number().int().min(1).default(600),
  /** A server with the open table-of-durations API, as http://roads.example:5000; without it drives are estimated. */
  TRAVEL_TABLE_URL: z.url().optional(),
})

export type Config = z.infer<typeof schema>

let read: Config | undefined

/** The configuration, read from the environment once. Throws one sentence that names each wrong setting. */
export function config(): Config {
  if (read) return read
  const result = schema.safeParse(process.env)
  if (!result.success) {
    const wrong = result.error.issues.map((issue) => `${issue.path.join('.')} ${issue.message}`)
    throw new AppError('misconfigured', `The configuration is not complete: ${wrong.join('; ')}. See the table in the README.`)
  }
  read = result.data
  return read
}

/** Forgets what was read; for tests that change the environment. */
export function forgetConfig(): void {
  read = undefined
}

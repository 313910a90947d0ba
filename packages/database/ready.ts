import { appClient, identityClient } from './client.ts'

/** Whether the database answers at both logins. */
export async function databaseAnswers(): Promise<boolean> {
  try {
    await Promise.all([appClient().$queryRaw`select 1`, identityClient().$queryRaw`select 1`])
    return true
  } catch {
    return false
  }
}

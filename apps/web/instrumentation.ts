/** Runs once when the server starts: refuses to serve with a login that could pass by row security. */
export async function register() {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return
  const { refuseBypassingLogins } = await import('@almanac/database/login-check')
  const { log } = await import('@almanac/runtime/log')
  try {
    await refuseBypassingLogins()
  } catch (error) {
    log().fatal(error instanceof Error ? error.message : 'The server cannot start.')
    process.exit(1)
  }
}

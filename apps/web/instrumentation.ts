/** Runs once when the server starts. The check stands in a file of its own, since only Node can load it. */
export async function register() {
  if (process.env.NEXT_RUNTIME === 'nodejs') {
    const { checkDatabase } = await import('./instrumentation-node.ts')
    await checkDatabase()
  }
}

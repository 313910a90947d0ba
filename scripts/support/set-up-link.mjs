// Makes the address at which somebody founds a company, once.
/** A set-up link for the database that `env` names: { url, expiresAt }; with `onlyWhenEmpty`, null where a company exists. */
export async function makeSetUpLink(env, { onlyWhenEmpty = false } = {}) {
  Object.assign(process.env, env) // it is made by the project's own package, which reads the environment
  const { makeSetUpLink: make } = await import('@almanac/identity/set-up')
  const { closeClients } = await import('@almanac/database/client')
  try {
    return await make({ onlyWhenEmpty })
  } finally {
    await closeClients()
  }
}

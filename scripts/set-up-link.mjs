// `node scripts/run.mjs set-up-link`: prints an address at which somebody founds one more company, once. For whoever runs the server.
import { generateClient } from './support/build.mjs'
import { openEnvironment, readSettings } from './support/environment.mjs'
import { tellError } from './support/say.mjs'
import { makeSetUpLink } from './support/set-up-link.mjs'

async function run() {
  const environment = await openEnvironment(readSettings())
  try {
    await generateClient()
    const { url } = await makeSetUpLink(environment.env)
    console.log(`${url}\nFounds one company. Works once, for three days; give it to its owner and to nobody else.`)
  } finally {
    await environment.stop()
  }
}

await run().catch(tellError)
process.exit()

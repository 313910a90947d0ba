import path from 'node:path'
import { expect } from '@playwright/test'

const script = (name: string) => import(new URL(`../../scripts/support/${name}.mjs`, import.meta.url).href)
const [{ freePort }, { dataDir }, { startNode }] = await Promise.all(['free-port', 'paths', 'processes'].map(script))

/** A web server of a test's own beside the one that others use, on their database, so that its process can really be stopped: `start` and `stop` it as often as need be. */
export async function ownServer() {
  const port: number = await freePort()
  const { WEB_SERVER: server } = process.env
  if (!server) throw new Error('nothing says which build is tested')
  const baseURL = `http://localhost:${port}`
  const env = { NODE_ENV: 'production', DATA_DIR: dataDir, HOSTNAME: '127.0.0.1', PORT: String(port), PUBLIC_URL: baseURL }
  let running: { stop: () => Promise<void> } | null = null
  const answers = () =>
    fetch(`http://127.0.0.1:${port}/readyz`).then(
      ({ ok }) => ok,
      () => false,
    )
  return {
    baseURL,
    start: async () => {
      running = startNode('web', ['apps/web/front/serve.ts', path.dirname(server)], { env, output: 'ignore' })
      await expect.poll(answers, { timeout: 60_000 }).toBe(true)
    },
    stop: async () => {
      await running?.stop()
      running = null
      expect(await answers()).toBe(false)
    },
  }
}

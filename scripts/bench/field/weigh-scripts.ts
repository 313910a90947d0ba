import http from 'node:http'
import type { Browser, Page } from '@playwright/test'

/** Compressed JavaScript of a page in bytes: what its first picture needs, in both encodings, and what it fetches after that. */
export type Weight = { page: string; files: number; brotli: number; gzip: number; laterBrotli: number }

/** Bytes of a body as they travel. */
const sent = (url: string, encoding: 'br' | 'gzip') =>
  new Promise<number>((resolve, reject) => {
    http
      .get(url, { headers: { 'accept-encoding': encoding } }, (answer) => {
        if (answer.headers['content-encoding'] !== encoding) reject(new Error(`${url} is not sent as ${encoding}`))
        let bytes = 0
        answer.on('data', (piece: Buffer) => {
          bytes += piece.byteLength
        })
        answer.on('end', () => resolve(bytes))
      })
      .on('error', reject)
  })

async function total(urls: Iterable<string>, encoding: 'br' | 'gzip'): Promise<number> {
  let bytes = 0
  for (const url of urls) bytes += await sent(url, encoding)
  return bytes
}

/** A page's scripts until `shown` stands and a second longer, and those of the ten seconds after, in a browser that has nothing of the app but its session. */
export async function weigh(
  browser: Browser,
  name: string,
  cookies: Page,
  href: string,
  shown: (page: Page) => Promise<unknown>,
): Promise<Weight> {
  const context = await browser.newContext({
    baseURL: process.env.BASE_URL,
    serviceWorkers: 'block',
    storageState: await cookies.context().storageState({ indexedDB: true }),
  })
  const page = await context.newPage()
  const scripts = new Set<string>()
  page.on('request', (request) => {
    if (request.resourceType() === 'script') scripts.add(request.url())
  })
  await page.goto(href)
  await shown(page)
  await page.waitForTimeout(1000)
  const first = new Set(scripts)
  await page.waitForTimeout(10_000)
  await context.close()
  const later = [...scripts].filter((url) => !first.has(url))
  return {
    page: name,
    files: first.size,
    brotli: await total(first, 'br'),
    gzip: await total(first, 'gzip'),
    laterBrotli: await total(later, 'br'),
  }
}

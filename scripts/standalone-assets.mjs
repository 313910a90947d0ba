// Next's standalone output leaves static files out, for a CDN, and knows nothing of a service worker and processes aside; put all beside its server. Runs in apps/web after
// `next build`.
import fs from 'node:fs'
import path from 'node:path'
import { promisify } from 'node:util'
import zlib from 'node:zlib'
import { build } from 'rolldown'
import { makeWorker } from '../apps/web/field-worker/make-worker.mjs'

const app = '.next/standalone/apps/web'
for (const [from, to] of [
  ['.next/static', `${app}/.next/static`],
  ['public', `${app}/public`],
])
  if (fs.existsSync(from)) fs.cpSync(from, to, { recursive: true })

// Compressed once and as small as it goes, for whoever can read it: apps/web/front/serve.ts hands these out.
const [brotli, gzip] = [promisify(zlib.brotliCompress), promisify(zlib.gzip)]
const texts = fs.readdirSync(`${app}/.next/static`, { recursive: true }).filter((name) => /\.(js|css|json|svg|txt)$/.test(name))
await Promise.all(
  texts.map(async (name) => {
    const file = path.join(app, '.next/static', name)
    const text = fs.readFileSync(file)
    fs.writeFileSync(`${file}.br`, await brotli(text, { params: { [zlib.constants.BROTLI_PARAM_SIZE_HINT]: text.length } }))
    fs.writeFileSync(`${file}.gz`, await gzip(text, { level: 9 }))
  }),
)

await makeWorker(`${app}/public/field-worker.js`)

// Each process aside that the web server starts, as one file that needs nothing else (ASIDE_FOLDER in next.config.ts). All others run in the worker.
const imports = path.resolve('../../packages/operations/imports')
const asides = ['read-rows-aside.ts']
for (const name of asides)
  await build({
    input: path.join(imports, name),
    platform: 'node',
    logLevel: 'warn',
    output: { file: path.join(app, 'asides', name.replace(/\.ts$/, '.mjs')), format: 'esm', codeSplitting: false },
  })

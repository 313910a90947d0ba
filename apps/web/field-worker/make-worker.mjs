// Makes the field's service worker: one file, with the list of what the shell is made of written in. Runs in apps/web after `next build`.
import { createHash } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import { build } from 'rolldown'

const built = '.next'
const SHELL_PAGE = '/(shell)/field/page'
/** Pages that come from the server, and may lose it while they are open. */
const FIELD_PAGES = ['/(field)/today/page', '/(field)/visits/[id]/page']

/** What the framework wrote down of a page: the files that its parts need, by URL, and its styles. */
function filesOf(page) {
  const said = {}
  const text = fs.readFileSync(path.join(built, `server/app${page}_client-reference-manifest.js`), 'utf8')
  // The file sets a global; it is the framework's own.
  new Function('globalThis', text)(said)
  const { clientModules, entryCSSFiles, entryJSFiles } = said.__RSC_MANIFEST[page]
  const { rootMainFiles, polyfillFiles } = JSON.parse(fs.readFileSync(path.join(built, 'build-manifest.json'), 'utf8'))
  const parts = Object.values(clientModules).flatMap((one) => one.chunks.map((file) => file.replace(/^\/_next\//, '')))
  const entries = Object.values(entryJSFiles ?? {}).flat()
  const styles = Object.values(entryCSSFiles ?? {}).flatMap((list) => list.map((one) => one.path))
  const all = new Set([...rootMainFiles, ...polyfillFiles, ...parts, ...entries, ...styles].map((file) => file.replace(/^\//, '')))
  return [...all].filter((file) => fs.existsSync(path.join(built, file)))
}

/** The files that these name, and those that they name: pieces that a page fetches when they are shown (client/piece.tsx). */
function piecesOf(files) {
  const all = new Set(files)
  for (const file of all)
    if (file.endsWith('.js'))
      for (const [named] of fs.readFileSync(path.join(built, file), 'utf8').matchAll(/static\/chunks\/[\w.~-]+\.(?:js|css)/g))
        if (fs.existsSync(path.join(built, named))) all.add(named)
  return [...all].filter((file) => !files.includes(file))
}

/** The letters of the languages that the app speaks; further ones come with a connection. */
const fonts = () =>
  fs
    .readdirSync(path.join(built, 'static/media'))
    .filter((name) => /-latin(-ext)?-wght-.*\.woff2$/.test(name))
    .map((name) => `static/media/${name}`)

/** Writes the worker into `file`. What it keeps changes with each build: the shell by the build's id, the rest by the names of the files. */
export async function makeWorker(file) {
  const shell = filesOf(SHELL_PAGE)
  const pieces = FIELD_PAGES.flatMap((page) => piecesOf(filesOf(page)))
  const made = [...new Set([...shell, ...piecesOf(shell), ...pieces])]
  if (!made.some((name) => name.endsWith('.js')) || !made.some((name) => name.endsWith('.css')))
    throw new Error('the framework no longer says what the field’s shell is made of: see apps/web/field-worker/make-worker.mjs')
  if (pieces.length === 0)
    throw new Error('no pieces of the field’s pages were found among the framework’s files: see apps/web/field-worker/make-worker.mjs')
  const revision = fs.readFileSync(path.join(built, 'BUILD_ID'), 'utf8')
  const ofFile = (name) =>
    createHash('sha256')
      .update(fs.readFileSync(path.join('public', name)))
      .digest('hex')
      .slice(0, 16)
  const precached = [
    { url: '/field', revision },
    ...['field.webmanifest', 'field-icon.svg'].map((name) => ({ url: `/${name}`, revision: ofFile(name) })),
    ...[...made, ...fonts()].map((name) => ({ url: `/_next/${name}`, revision: null })),
  ]
  await build({
    input: 'field-worker/worker.mjs',
    platform: 'browser',
    logLevel: 'warn',
    transform: { define: { PRECACHED: JSON.stringify(precached), 'process.env.NODE_ENV': '"production"' } },
    output: { file, format: 'iife', codeSplitting: false, minify: true },
  })
}

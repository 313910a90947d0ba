// Next's standalone output leaves static files out, for a CDN; put them beside its server. Runs in apps/web after `next build`.
import fs from 'node:fs'

const app = '.next/standalone/apps/web'
for (const [from, to] of [
  ['.next/static', `${app}/.next/static`],
  ['public', `${app}/public`],
])
  if (fs.existsSync(from)) fs.cpSync(from, to, { recursive: true })

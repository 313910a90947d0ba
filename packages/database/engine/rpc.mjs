#!/usr/bin/env node
// Stands in for Prisma's native schema engine (PRISMA_SCHEMA_ENGINE_BINARY): JSON-RPC on stdin and stdout.
import { readFileSync } from 'node:fs'
import { createInterface } from 'node:readline'
import pg from 'pg'
import { createSchemaEngine } from './wasm.mjs'

const args = process.argv.slice(2)
if (args.includes('--version')) {
  console.log('schema-engine (wasm)')
  process.exit(0)
}

function log(level, message, error_code) {
  const entry = { timestamp: new Date().toISOString(), level, fields: { message, error_code }, target: 'schema_engine::logger' }
  process.stderr.write(`${JSON.stringify(entry)}\n`)
}
log('INFO', 'Starting schema engine (wasm)') // the CLI drops the first line

let url = ''
const datamodels = []
for (const [i, arg] of args.entries()) {
  if (arg === '--datasource') url = JSON.parse(args[i + 1]).url
  if (arg === '--datamodels') datamodels.push([args[i + 1], readFileSync(args[i + 1], 'utf8')])
}

/** `cli create-database`, `drop-database` and `can-connect-to-database`, which the CLI calls outside JSON-RPC. */
async function databaseCommand(verb) {
  const address = new URL(url)
  const name = decodeURIComponent(address.pathname.slice(1))
  const sql = { 'create-database': 'CREATE DATABASE', 'drop-database': 'DROP DATABASE' }[verb]
  if (sql) address.pathname = '/postgres'
  try {
    const client = new pg.Client({ connectionString: address.href })
    await client.connect()
    if (sql) await client.query(`${sql} ${client.escapeIdentifier(name)}`)
    await client.end()
    return 0
  } catch (error) {
    if (error.code === '3D000') log('ERROR', `Database \`${name}\` does not exist`, 'P1003')
    else log('ERROR', error.message, error.code === 'ECONNREFUSED' ? 'P1001' : 'P1000')
    return 1
  }
}
const cli = args.indexOf('cli')
if (cli >= 0) process.exit(await databaseCommand(args[cli + 1]))

const send = (message) => process.stdout.write(`${JSON.stringify({ jsonrpc: '2.0', ...message })}\n`)
let engine
for await (const line of createInterface({ input: process.stdin })) {
  if (!line.trim()) continue
  const { id, method, params } = JSON.parse(line)
  if (!method) continue // the CLI's answer to our 'print'
  try {
    if (!engine) {
      const onPanic = (message) => log('ERROR', message)
      const created = await createSchemaEngine(url || 'postgresql://unset', {
        datamodels: datamodels.length ? datamodels : undefined,
        onPanic,
      })
      engine = created.engine
    }
    const result = method === 'getDatabaseVersion' ? await engine.version(params) : await engine[method](params)
    if (method === 'diff' && result?.stdout) send({ id: 1e6, method: 'print', params: { content: result.stdout } })
    send({ id, result: result ?? null })
  } catch (error) {
    const message = error.message ?? String(error)
    send({ id, error: { code: 4466, message, data: { is_panic: false, message, error_code: error.code ?? null, meta: null } } })
  }
}
process.exit(0)

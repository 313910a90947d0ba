// Prisma's own schema engine, as the WASM build on npm: the native one is a download from Prisma's site, which a machine may not reach.
// Keep @prisma/schema-engine-wasm at the version whose hash is @prisma/engines-version's.
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import { PrismaPg } from '@prisma/adapter-pg'
import { bindMigrationAwareSqlAdapterFactory, ColumnTypeEnum } from '@prisma/driver-adapter-utils'

const PG_CHAR = 18 // PostgreSQL's internal "char", which adapter-pg has no column type for
const PG_TEXT = 25

/** Reads internal "char" columns as text, and tells the engine that they are characters. */
function withCharColumns(adapter) {
  const charColumns = new WeakMap()
  const performIO = adapter.performIO.bind(adapter)
  const queryRaw = adapter.queryRaw.bind(adapter)
  adapter.performIO = async (query) => {
    const result = await performIO(query)
    const found = result.fields.flatMap((field, i) => (field.dataTypeID === PG_CHAR ? [i] : []))
    for (const i of found) result.fields[i].dataTypeID = PG_TEXT
    charColumns.set(result.rows, found)
    return result
  }
  adapter.queryRaw = async (query) => {
    const result = await queryRaw(query)
    for (const i of charColumns.get(result.rows) ?? []) result.columnTypes[i] = ColumnTypeEnum.Character
    return result
  }
  return adapter
}

/**
 * adapter-pg splits a script at every ';' (which breaks DO $$ … $$) and spreads it over the pool.
 * One simple query runs the whole file in one implicit transaction, as the native engine does.
 */
function withWholeScripts(adapter, { beforeScript = '', afterScript = '' }) {
  adapter.executeScript = async (script) => {
    try {
      await adapter.underlyingDriver().query(`${beforeScript}${script}\n${afterScript}`)
    } catch (error) {
      adapter.onError(error)
    }
  }
  return adapter
}

class MigrationPg extends PrismaPg {
  constructor(url, options) {
    super({ connectionString: url, options: options.session })
    this.url = url
    this.migrationOptions = options
    this.opened = []
  }
  async connect() {
    const adapter = withWholeScripts(withCharColumns(await super.connect()), this.migrationOptions)
    this.opened.push(adapter)
    return adapter
  }
  async close() {
    for (const adapter of this.opened.splice(0)) await adapter.dispose()
  }
  // adapter-pg's own spreads { connectionString, database }, where the string wins: it would use the main database
  async connectToShadowDb() {
    const name = `prisma_migrate_shadow_db_${crypto.randomUUID()}`
    const main = await new MigrationPg(this.url, {}).connect()
    await main.executeScript(`CREATE DATABASE "${name}"`)
    const address = new URL(this.url)
    address.pathname = `/${name}`
    const shadow = await new MigrationPg(address.href, {}).connect()
    const dispose = shadow.dispose.bind(shadow)
    shadow.dispose = async () => {
      await dispose()
      await main.executeScript(`DROP DATABASE IF EXISTS "${name}" WITH (FORCE)`)
      await main.dispose()
    }
    return shadow
  }
}

let loaded

/** The engine's glue code has one place for the WASM instance, so a process loads it once, also when two migrations run in it. */
async function loadEngine(onPanic) {
  globalThis.PRISMA_WASM_PANIC_REGISTRY = { set_message: onPanic }
  const { __wbg_set_wasm, ...glue } = await import('@prisma/schema-engine-wasm/schema_engine_bg')
  const dir = path.dirname(createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm'))
  // The engine never clears the ten-second limit that it sets on its lock: such a timer must not keep the process.
  const withLooseTimers = Object.entries(glue).map(([name, call]) =>
    name.startsWith('__wbg_setTimeout') ? [name, (...args) => call(...args).unref()] : [name, call],
  )
  const imports = { './schema_engine_bg.js': Object.fromEntries(withLooseTimers) }
  const { instance } = await WebAssembly.instantiate(readFileSync(path.join(dir, 'schema_engine_bg.wasm')), imports)
  __wbg_set_wasm(instance.exports)
  instance.exports.__wbindgen_start()
  return glue.SchemaEngine
}

/**
 * @param {string} url address of the database
 * @param {{ datamodels?: [string, string][], onPanic?: (message: string) => void,
 *   session?: string, beforeScript?: string, afterScript?: string }} [options] `session`: command-line options for each session
 *   (`-c lock_timeout=5s`); `beforeScript`, `afterScript`: SQL that begins and ends each script, in its transaction
 * @returns the engine, and `close()`, which ends its sessions: one of them holds the engine's own lock until then
 */
export async function createSchemaEngine(url, { datamodels, onPanic = console.error, ...options } = {}) {
  loaded ??= loadEngine(onPanic)
  const SchemaEngine = await loaded
  const sessions = new MigrationPg(url, options)
  const engine = await SchemaEngine.new({ datamodels }, () => {}, bindMigrationAwareSqlAdapterFactory(sessions))
  return { engine, close: () => sessions.close() }
}

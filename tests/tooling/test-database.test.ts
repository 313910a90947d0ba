import pg from 'pg'
import { expect, test } from 'vitest'
import { testDatabase } from '../support/test-database.ts'

async function whoAmI(connectionString: string) {
  const client = new pg.Client({ connectionString })
  await client.connect()
  const { rows } = await client.query(
    'select current_user as login, rolsuper as superuser, rolbypassrls as bypass from pg_roles where rolname = current_user',
  )
  await client.end()
  return rows[0]
}

test('a test file gets a database with four logins, of which only one may pass by row security', async () => {
  const { migrationUrl, appUrl, identityUrl, superUrl } = await testDatabase()
  expect(await whoAmI(migrationUrl)).toEqual({ login: 'almanac_owner', superuser: false, bypass: false })
  expect(await whoAmI(appUrl)).toEqual({ login: 'almanac_app_login', superuser: false, bypass: false })
  expect(await whoAmI(identityUrl)).toEqual({ login: 'almanac_identity_login', superuser: false, bypass: false })
  expect(await whoAmI(superUrl)).toMatchObject({ superuser: true })
})

test('the app may put tasks on the queue, but makes no table in it', async () => {
  const { appUrl } = await testDatabase()
  const client = new pg.Client({ connectionString: appUrl })
  await client.connect()
  await expect(client.query('select count(*) from queue.job')).resolves.toMatchObject({ rowCount: 1 })
  await expect(client.query('create table queue.mine (id int)')).rejects.toMatchObject({ code: '42501' })
  await expect(client.query('create table public.mine (id int)')).rejects.toMatchObject({ code: '42501' })
  await client.end()
})

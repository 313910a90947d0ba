import { expect, test } from 'vitest'

// Plain JavaScript, without types of its own.
const { runReadmeSteps } = await import(new URL('./readme-steps.mjs', import.meta.url).href)

test('the README’s steps on an own PostgreSQL do what they say: roles, passwords, start, and no demo', { timeout: 400_000 }, async ({
  skip,
}) => {
  const how = await runReadmeSteps((line: string) => process.stderr.write(`${line}\n`))
  if (how === 'not run')
    skip('NOT RUN: no PostgreSQL of the system is here (Debian: apt-get install postgresql), so the README’s steps were not tried')
  expect(how).toBe('run')
})

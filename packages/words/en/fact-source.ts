/** Where a fact came from, beside it; `{day}` is written already. */
export const factSource = {
  visit: 'visit {day}',
  'close-out': 'close-out {day}',
  link: 'said by link {day}',
  call: 'said on a call, {day}',
  label: 'read off the unit, {day}',
  measured: 'measured, {day}',
  papers: 'from company records, {day}',
  importLine: 'import {file}, line {line}',
  importList: 'import {file}, last right {day}',
} as const

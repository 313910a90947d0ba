import pg from 'pg'

export const client = new pg.Client()

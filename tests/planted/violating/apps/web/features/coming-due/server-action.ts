'use server'

export async function save() {}

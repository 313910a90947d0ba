export const save = async () => {
  'use server'
}

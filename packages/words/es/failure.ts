import type { failure as english } from '../en/failure.ts'
import type { Translation } from '../translation.ts'

export const failure: Translation<typeof english> = {
  unreachable: 'No hay conexión con el servidor. Lo que escribió sigue aquí; intente otra vez cuando tenga conexión.',
  page: 'Esta página tuvo un error.',
  pageKept: 'Lo guardado está a salvo. Lo que escribió aquí y no guardó puede haberse perdido.',
}

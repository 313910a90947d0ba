import type { askedFor as english } from '../en/asked-for.ts'
import type { Translation } from '../translation.ts'

export const askedFor: Translation<typeof english> = {
  link: 'Por el enlace de un recordatorio. Días que convienen: {days}',
  quote: 'Ver y cotizar',
  complaint: 'Queja después del cambio de lecho del {day}',
  hard: 'Agua dura desde {when}',
  'sees/hard-water': 'Agua dura',
  'sees/no-water': 'No hay agua',
  'sees/leak': 'Fuga',
  'sees/low-pressure': 'Poca presión',
  'sees/beads': 'Perlas en la llave',
  'sees/salty': 'Sabor salado',
  'sees/discolored': 'Agua café',
  'sees/runs-on': 'No deja de correr',
  'sees/no-salt-used': 'No gasta sal',
  'sees/question': 'Una pregunta',
}

import type { askedFor as english } from '../en/asked-for.ts'
import type { Translation } from '../translation.ts'

export const askedFor: Translation<typeof english> = {
  link: 'Por el enlace de un recordatorio. Días que convienen: {days}',
  guide: 'El dueño empezó con nuestro enlace y pide una visita',
  guideStep: 'Se detuvo en: {step}',
  guideStop: 'Motivo: {what}',
  guideAround: '{length} alrededor del tanque',
  guideHeight: '{length} de alto',
  guidePhotographs: '{count, plural, one {# foto en la página del sitio} other {# fotos en la página del sitio}}',
  'kit/collected': 'Kit para un dueño que cambia el lecho por su cuenta, para recoger',
  'kit/shipped': 'Kit para un dueño que cambia el lecho por su cuenta, para enviar',
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

import { Button } from '@almanac/ui/button'

export const one = Button

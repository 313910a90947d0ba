import { useState } from 'react'

export const state = useState

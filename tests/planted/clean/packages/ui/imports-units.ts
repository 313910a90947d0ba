import { ok } from '@almanac/units/result'
import { useState } from 'react'

export const both = { ok, useState }

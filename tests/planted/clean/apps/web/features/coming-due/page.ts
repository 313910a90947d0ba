'use client'

export const page = 1

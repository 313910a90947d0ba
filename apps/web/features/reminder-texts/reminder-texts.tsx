'use client'
import { type Channel, channels, channelWords } from '@almanac/records/channel'
import { choicesOf } from '@almanac/records/choices'
import { type Language, languages, languageWords } from '@almanac/records/language'
import { FilterSelect } from '@almanac/ui/filter-select'
import { Notice } from '@almanac/ui/notice'
import { PageHead } from '@almanac/ui/page-head'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { usePermission, useSession } from '@/client/providers'
import { EditText } from './edit-text.tsx'

const CHANNELS: Readonly<Record<Channel, string>> = { ...channelWords, text: 'Text message' }

/** What reminders say, by channel and language: the company's own words or the standard ones. */
export function ReminderTexts() {
  const { api } = useSession()
  const owner = usePermission('manage:company')
  const [channel, setChannel] = useState<Channel>('email')
  const [language, setLanguage] = useState<Language>('en')
  const { data, error, refetch } = useQuery(api.reminders.texts.queryOptions())
  const found = data?.texts.find((one) => one.channel === channel && one.language === language)
  return (
    <>
      <PageHead
        above={
          <TextLink href="/reminders" link={Link}>
            Reminders
          </TextLink>
        }
        title="Reminder texts"
        lead="What your customers read, in your own words. Names in braces are filled in for each customer."
      />
      {owner ? null : <Notice kind="mind">You can read these here. Only the owner changes them.</Notice>}
      {error ? <Problem happened={readFailure(error).message} onRetry={() => void refetch()} /> : null}
      <div className="mb-6 flex flex-wrap gap-x-8 gap-y-2">
        <FilterSelect
          label="Channel"
          choices={choicesOf(channels, CHANNELS)}
          value={channel}
          onChange={(event) => setChannel(event.target.value as Channel)}
        />
        <FilterSelect
          label="Language"
          choices={choicesOf(languages, languageWords)}
          value={language}
          onChange={(event) => setLanguage(event.target.value as Language)}
        />
      </div>
      {found ? <EditText key={`${channel} ${language} ${found.own ? 'own' : 'standard'}`} text={found} /> : null}
      {data || error ? null : <Skeleton lines={10} label="Loading the texts" />}
    </>
  )
}

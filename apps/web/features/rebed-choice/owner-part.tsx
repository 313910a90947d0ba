import type { BedChoice } from '@almanac/contract/bed-choice'
import { ownerOrFirm } from '@almanac/softener/choice/owner-or-firm'
import { type OwnerTold, ownerQuestion } from '@almanac/softener/choice/owner-question'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Select } from '@almanac/ui/select'
import { StatusWord } from '@almanac/ui/status-word'
import { TextInput } from '@almanac/ui/text-input'
import { TextLink } from '@almanac/ui/text-link'
import { formatInstant } from '@almanac/units/format-clock'
import { useWords } from '@almanac/words/use-words'
import { useState } from 'react'
import { AmountField } from '@/client/amount-field'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useAmounts } from '@/client/use-amounts'
import { useCommand } from '@/client/use-command'
import { useRebedFirm } from '@/client/use-rebed-firm'

type OwnerFacts = Omit<OwnerTold, 'pressurePsi'>
type YesNo = { name: Exclude<keyof OwnerFacts, 'access'>; label: string }

const QUESTIONS: readonly YesNo[] = [
  { name: 'helper', label: 'Is a second strong person there?' },
  { name: 'hasBypass', label: 'Is there a bypass?' },
  { name: 'bypassHolds', label: 'Has it been proven to hold?' },
  { name: 'lawAllows', label: 'Does local law let an owner open the pipe?' },
  { name: 'stopCase', label: 'Lead, asbestos, crawl space, boil-water notice or crack?' },
  { name: 'metalPipe', label: 'Metal pipe?' },
]
const YES_NO = [
  { value: 'yes', label: 'Yes' },
  { value: 'no', label: 'No' },
]
const ACCESS = [
  { value: 'level', label: 'On the level' },
  { value: 'stairs', label: 'Over stairs' },
  { value: 'tight', label: 'In a tight place' },
] as const
const NOBODY_ASKED: OwnerFacts = {
  ...{ access: null, helper: null, hasBypass: null, bypassHolds: null },
  ...{ valveNeedsPower: null, metalPipe: null, lawAllows: null, stopCase: null },
}
const WEIGHTS = {
  firm: { shape: 'triangle', tone: 'danger' },
  ask: { shape: 'diamond', tone: 'bead' },
  mind: { shape: 'dot', tone: 'soft' },
} as const
const WEIGHT_WORDS = { firm: 'our crew', ask: 'ask first', mind: 'mind' } as const
const VERDICTS = {
  firm: 'Leave this to our crew.',
  'ask-first': 'Can’t say yet. Ask these first, before anyone does it alone.',
  'owner-with-helper': 'An owner can do it with a helper who follows the points below.',
} as const

/** Owner or firm: what the answer hangs on, what an owner must never do, and what goes to a licensed person. */
export function OwnerPart({ choice }: { choice: BedChoice }) {
  const firm = useRebedFirm()
  const { api } = useSession()
  const words = useWords('ownerRebed')
  const [told, setTold] = useState<OwnerFacts>(NOBODY_ASKED)
  const amounts = useAmounts({ pressure: 'pressure' })
  const [law, setLaw] = useState('')
  const keep = useCommand(api.bedChoice.keepDecision.mutationOptions())
  const all: OwnerTold = { ...told, pressurePsi: amounts.now('pressure') }
  const answer = ownerOrFirm(ownerQuestion(choice.plan.bed, choice.plan.water.source, all, firm), words)
  const yesNo = (value: boolean | null) => (value === null ? '' : value ? 'yes' : 'no')
  return (
    <Section title="Owner or our crew?">
      <p className="mb-3 text-lead font-semibold">{VERDICTS[answer.verdict]}</p>
      <div className="mb-4 grid gap-x-6 gap-y-3 sm:grid-cols-2 lg:grid-cols-4">
        <Select
          label="How is the softener reached?"
          none="Not asked"
          choices={ACCESS}
          value={told.access ?? ''}
          onChange={(event) => setTold({ ...told, access: ACCESS.find((one) => one.value === event.target.value)?.value ?? null })}
        />
        {QUESTIONS.map(({ name, label }) => (
          <Select
            key={name}
            label={label}
            none="Not asked"
            choices={YES_NO}
            value={yesNo(told[name])}
            onChange={(event) => setTold({ ...told, [name]: event.target.value === '' ? null : event.target.value === 'yes' })}
          />
        ))}
        <AmountField label="Water pressure" {...amounts.field('pressure')} askOdd={false} />
      </div>
      <ul className="border-t border-line">
        {answer.grounds.map((ground) => (
          <li key={`${ground.topic}-${ground.words}`} className="grid gap-x-4 border-b border-line py-2 sm:grid-cols-[9rem_1fr]">
            <span>
              <StatusWord {...WEIGHTS[ground.weight]}>{WEIGHT_WORDS[ground.weight]}</StatusWord>
            </span>
            <span>{ground.words}</span>
          </li>
        ))}
      </ul>
      <div className="mt-5 grid gap-x-12 gap-y-5 lg:grid-cols-2">
        <Points title="Never, whoever does it" of={answer.never} />
        <Points title="For a licensed person" of={answer.refer} />
      </div>
      <p className="mt-3 max-w-[75ch] text-small text-soft">
        The local plumbing code and a licensed person come before this page. Common practice, no source; lifting by NIOSH 94-110.
      </p>
      <div className="mt-4 flex flex-wrap items-end gap-3">
        <div className="min-w-0 grow basis-60">
          <TextInput
            label="What the law says here, and who told you"
            hint="Needed before an owner does it alone"
            maxLength={300}
            value={law}
            onChange={(event) => setLaw(event.target.value)}
          />
        </div>
        <Button
          busy={keep.isPending}
          onClick={() => keep.send({ bedId: choice.plan.bed.bedId, told: all, verdict: answer.verdict, law: law.trim() })}
        >
          Keep this answer
        </Button>
      </div>
      {keep.error ? <Problem happened={readFailure(keep.error).message} /> : null}
      <Decisions of={choice.decisions} />
      {choice.decisions[0]?.verdict === 'owner-with-helper' ? <KitForOwner bedId={choice.plan.bed.bedId} /> : null}
    </Section>
  )
}

/** The kit of this tank for an owner who was told to go, set aside on a delivery by one press. */
function KitForOwner({ bedId }: { bedId: string }) {
  const { api } = useSession()
  const order = useCommand(api.guides.orderKit.mutationOptions())
  return (
    <div className="mt-3 flex flex-wrap items-center gap-3">
      <Button busy={order.isPending} onClick={() => order.send({ bedId, way: 'collected' })}>
        Kit to collect
      </Button>
      <Button busy={order.isPending} onClick={() => order.send({ bedId, way: 'shipped' })}>
        Kit to ship
      </Button>
      {order.data ? (
        <Notice
          kind={order.data.notKept.length > 0 ? 'mind' : 'done'}
          action={<TextLink href={`/jobs/${order.data.jobId}`}>Open the delivery</TextLink>}
        >
          {order.data.notKept.length > 0 ? `Set aside. Not in the stores: ${order.data.notKept.join('; ')}.` : 'The kit is set aside.'}
        </Notice>
      ) : null}
      {order.error ? <Problem happened={readFailure(order.error).message} /> : null}
    </div>
  )
}

/** What was decided before, with its reasons and the law. */
function Decisions({ of }: { of: BedChoice['decisions'] }) {
  const display = useDisplay()
  if (of.length === 0) return null
  return (
    <ul aria-label="Kept answers" className="mt-4 border-t border-line">
      {of.map(({ id, at, by, verdict, reasons, law }) => (
        <li key={id} className="border-b border-line py-2">
          <span className="font-semibold">{VERDICTS[verdict]}</span>{' '}
          <span className="text-small text-soft">{[formatInstant(at, display), by].filter(Boolean).join(', ')}</span>
          <span className="block text-small">{reasons.join(' ')}</span>
          {law ? <span className="block text-small">Law: {law}</span> : null}
        </li>
      ))}
    </ul>
  )
}

function Points({ title, of }: { title: string; of: readonly string[] }) {
  return (
    <div>
      <h3 className="mb-1 font-semibold">{title}</h3>
      <ul className="list-disc pl-5 marker:text-soft">
        {of.map((point) => (
          <li key={point}>{point}</li>
        ))}
      </ul>
    </div>
  )
}

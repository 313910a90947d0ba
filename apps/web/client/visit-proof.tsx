'use client'
import type { VisitProof } from '@almanac/contract/pictures'
import { useDisplay } from '@almanac/ui/display'
import { LinkButton } from '@almanac/ui/link-button'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextLink } from '@almanac/ui/text-link'
import { formatDay } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { readFailure } from './failure.ts'
import { usePermission, useSession } from './providers.tsx'
import { SendReport } from './send-report.tsx'

const pictureOf = (id: string) => `/api/pictures/${id}`

type PictureProps = { id: string; alt: string; size?: { width: number; height: number }; className: string }

/** A picture as the server keeps it; its own size keeps the page from jumping as it comes. */
function Picture({ id, alt, size, className }: PictureProps) {
  // biome-ignore lint/performance/noImgElement: behind a session and never kept by a browser, so there is nothing for the framework to optimise
  return <img src={pictureOf(id)} alt={alt} {...size} loading="lazy" className={className} />
}

/** Photographs in the order of their kinds, each opening in full. */
function Photographs({ proof, day }: { proof: VisitProof; day: string }) {
  const words = useWords('photographs')
  return (
    <ul className="mt-2 grid grid-cols-2 gap-3 sm:grid-cols-3">
      {proof.photographs.map(({ id, kind, width, height }) => (
        <li key={id}>
          <a href={pictureOf(id)} target="_blank" rel="noreferrer" className="block">
            <Picture
              id={id}
              alt={`${words(`kind/${kind}`)}, ${day}`}
              size={{ width, height }}
              className="aspect-4/3 w-full rounded-sheet border border-line bg-wash object-cover"
            />
          </a>
          <span className="text-small text-soft">{words(`kind/${kind}`)}</span>
        </li>
      ))}
    </ul>
  )
}

function Signature({ signature }: { signature: NonNullable<VisitProof['signature']> }) {
  const { answer, name, pictureId } = signature
  const [words, pictures] = [useWords('proof'), useWords('photographs')]
  return (
    <div className="mt-2">
      {pictureId ? (
        <Picture
          id={pictureId}
          alt={name ? words('signatureOf', { name }) : words('signature')}
          className="h-16 rounded-sheet bg-[#ffffff] p-1"
        />
      ) : null}
      <p className="text-small text-soft">
        {answer !== 'signed' ? pictures(`signing/${answer}`) : name ? pictures('signatureOf', { name }) : words('signed')}
      </p>
    </div>
  )
}

function VisitPart({ proof, withJob }: { proof: VisitProof; withJob: boolean }) {
  const display = useDisplay()
  const maySend = usePermission('close:visit')
  const [words, kinds, outcomes] = [useWords('proof'), useWords('jobKind'), useWords('outcome')]
  const day = formatDay(proof.day, display)
  const { photographs, coming, signature, state, outcome } = proof
  return (
    <li className="border-b border-line py-3">
      <div className="flex flex-wrap items-center justify-between gap-x-4 gap-y-2">
        <span>
          {day}
          {withJob ? (
            <>
              {', '}
              <TextLink href={`/jobs/${proof.jobId}`} link={Link}>
                {kinds(proof.kind).toLowerCase()}
              </TextLink>
            </>
          ) : null}
          {outcome ? <span className="text-soft">{`, ${outcomes(outcome).toLowerCase()}`}</span> : null}
        </span>
        {state === 'closed' ? (
          <span className="flex flex-wrap gap-3">
            <LinkButton href={`/api/visits/${proof.visitId}/report`} file>
              {words('report')}
            </LinkButton>
            {maySend ? <SendReport visitId={proof.visitId} /> : null}
          </span>
        ) : null}
      </div>
      {photographs.length > 0 ? <Photographs proof={proof} day={day} /> : null}
      {coming > 0 ? <p className="mt-1 text-small text-soft">{words('coming', { count: coming })}</p> : null}
      {signature ? <Signature signature={signature} /> : null}
    </li>
  )
}

type PartsProps = {
  proofs: readonly VisitProof[] | undefined
  error: unknown
  onRetry: () => void
  withJob: boolean
}

function Parts({ proofs, error, onRetry, withJob }: PartsProps) {
  const words = useWords('proof')
  return (
    <Section title={words('title')}>
      {error ? <Problem happened={readFailure(error).message} onRetry={onRetry} /> : null}
      {!error && !proofs ? <Skeleton lines={2} label={words('loading')} /> : null}
      {proofs?.length === 0 ? <p className="text-soft">{words('none')}</p> : null}
      {proofs && proofs.length > 0 ? (
        <ul className="border-t border-line">
          {proofs.map((proof) => (
            <VisitPart key={proof.visitId} proof={proof} withJob={withJob} />
          ))}
        </ul>
      ) : null}
    </Section>
  )
}

/** What the visits of a job have to show: photographs, signature, report. */
export function JobProof({ jobId }: { jobId: string }) {
  const { api } = useSession()
  const { data, error, refetch } = useQuery(api.pictures.ofJob.queryOptions({ input: { jobId } }))
  return <Parts proofs={data} error={error} onRetry={() => void refetch()} withJob={false} />
}

/** The same of all visits to a bed. */
export function BedProof({ bedId }: { bedId: string }) {
  const { api } = useSession()
  const { data, error, refetch } = useQuery(api.pictures.ofBed.queryOptions({ input: { bedId } }))
  return <Parts proofs={data} error={error} onRetry={() => void refetch()} withJob />
}

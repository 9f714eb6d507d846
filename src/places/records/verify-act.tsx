import './paper-verify.css'
import { useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { signedWords } from '../../app/sign/key-words'
import { capital } from '../../batch/capital'
import { Button } from '../../parts/button'
import { Notice } from '../../parts/notice'
import { type StoredTrail, verifiedWords, verifyStored } from './verify-stored'

interface VerifyActProps {
  batch: string
  /** The number of the first entry that does not fit, or null. */
  onFound: (brokenAt: number | null) => void
}

/** Verify: reads what is stored anew, and says whether it is as it was written. */
export function VerifyAct({ batch, onFound }: VerifyActProps) {
  const app = useApp()
  const [busy, setBusy] = useState(false)
  const [found, setFound] = useState<StoredTrail | null>(null)
  const verify = async () => {
    setBusy(true)
    const stored = await verifyStored(app, `batch:${batch}`)
    setFound(stored)
    setBusy(false)
    onFound(stored.database.intact ? null : stored.database.brokenAt)
  }
  return (
    <div class="paper-verify">
      <Button icon="check" label={busy ? 'Reading it all' : 'Verify'} disabled={busy} onPress={() => void verify()} />
      {found && <Found found={found} />}
    </div>
  )
}

function Found({ found: { database, gone, copy, device } }: { found: StoredTrail }) {
  const signed = signedWords(device)
  const isSignedWell = device.every(({ fits }) => fits !== false)
  const good = database.intact && gone === 0 && isSignedWell
  const title = gone > 0 ? `${gone} entries are missing at the end` : capital(foundWords(database, isSignedWell))
  return (
    <Notice kind={good ? 'good' : 'over'} title={`${title}.`} live>
      <p>
        {copy === null ? 'The second copy could not be read.' : `The second copy is ${secondWords(copy.intact)}`}
        {copy && !copy.intact && `: ${verifiedWords(copy)}.`}
      </p>
      {signed !== null && <p class={isSignedWell ? undefined : 'paper-outside'}>{signed}</p>}
      {!good && <p>Save a backup file before anything else, and compare with an earlier one.</p>}
    </Notice>
  )
}

const foundWords = (database: StoredTrail['database'], isSignedWell: boolean): string =>
  database.intact && !isSignedWell ? 'every hash fits, and a signature does not' : verifiedWords(database)

const secondWords = (intact: boolean): string => (intact ? 'as it was written.' : 'not as it was written')

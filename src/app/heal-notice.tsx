import { signal } from '@preact/signals'
import { Button } from '../parts/button'
import { Notice, type NoticeKind } from '../parts/notice'
import type { HealReport } from '../ports/event-log'
import { useApp } from './app'
import { healText } from './heal-words'

/** How many reports of this start the person has put away: each is said once, wherever they are. */
const seen = signal(0)

/** What was mended between the two copies, in a sentence, until it is put away; it stands in Setup for longer. */
export function HealNotice() {
  const { heals } = useApp()
  const fresh = heals.value.slice(seen.value)
  const last = fresh.at(-1)
  if (last === undefined) return null
  const more = fresh.length > 1 ? ` ${fresh.length - 1} more under Setup, Storage and backup.` : ''
  return (
    <div class="heal">
      <Notice kind={kindOf(last)} icon="hard-drive" title={`${healText(last)}${more}`} live>
        <Button
          label="Good to know"
          onPress={() => {
            seen.value = heals.value.length
          }}
        />
      </Notice>
    </div>
  )
}

const kindOf = ({ code }: HealReport): NoticeKind =>
  code === 'DAMAGED_ENTRY' || code === 'ONE_COPY_ONLY' ? 'caution' : 'info'

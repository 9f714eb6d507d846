import './checks-today.css'
import { useEffect, useMemo } from 'preact/hooks'
import { useApp } from '../../app/app'
import type { BackupSight } from '../../app/backup/backup-due'
import { counted } from '../../app/counted'
import { type Format, useFormat } from '../../app/format'
import { isToPull } from '../../app/jars-due'
import { addressOf, type Route } from '../../app/routes'
import { useJarsLeft } from '../../app/use-jars-left'
import { classes } from '../../parts/classes'
import { Icon, type IconName } from '../../parts/icon'
import type { TodayCheck } from './checks'
import { JarsToday } from './jars-today'
import { createTodayModel } from './today-model'

/** What is due today: of batches, of instruments, of the data. */
export function ChecksToday() {
  const app = useApp()
  const model = useMemo(() => createTodayModel(app), [app])
  useEffect(() => model.dispose, [model])
  const checks = model.checks.value
  const nowMs = Math.floor(app.nowMs.value / 60_000) * 60_000
  const jars = (useJarsLeft() ?? []).filter(({ pull }) => isToPull(pull, nowMs))
  const [due, later] = [checks.filter((check) => check.due), checks.filter((check) => !check.due)]
  return (
    <section class="checks" aria-labelledby="checks-today">
      <h2 class="checks-title" id="checks-today">
        Checks today
      </h2>
      {checks.length === 0 && jars.length === 0 ? (
        <p class="checks-none">
          <Icon name="check" /> Nothing is due.
        </p>
      ) : (
        <ul class="checks-list">
          {due.map((check) => (
            <CheckRow key={keyOf(check)} check={check} />
          ))}
          <JarsToday jars={jars} nowMs={nowMs} />
          {later.map((check) => (
            <CheckRow key={keyOf(check)} check={check} />
          ))}
        </ul>
      )}
    </section>
  )
}

const CheckRow = ({ check }: { check: TodayCheck }) => {
  const { icon, title, sub, to } = useWords(check)
  return (
    <li>
      <a class={classes('check', check.due && 'check-due')} href={addressOf(to)}>
        <Icon name={icon} size={28} />
        <span class="check-words">
          <strong>{title}</strong>
          <span class="check-sub">{sub}</span>
        </span>
      </a>
    </li>
  )
}

interface CheckWords {
  icon: IconName
  title: string
  sub: string
  to: Route
}

function useWords(check: TodayCheck): CheckWords {
  const format = useFormat()
  switch (check.kind) {
    case 'batch': {
      const { batch, labels, dueAtMs, due } = check
      const open = batch.stage === 'in-hand' || batch.stage === 'parked'
      const when = due ? `due since ${format.dateTime(dueAtMs)}` : `today at ${format.time(dueAtMs)}`
      const one = labels.length === 1
      return {
        icon: labels.every((label) => /pH/.test(label)) ? 'droplet' : 'test-tube',
        title: `${batch.shortName}: ${one ? labels.join() : `${labels.length} checks`}`,
        sub: one ? when : `${labels.join(' · ')}, ${when}`,
        to: open ? { place: 'run', batch: batch.id } : { place: 'records', batch: batch.id },
      }
    }
    case 'balance':
      return {
        icon: 'scale',
        title: `${check.balance.name}: reference mass`,
        sub: check.dueAtMs === null ? 'checked when a batch starts' : `due since ${format.dateTime(check.dueAtMs)}`,
        to: { place: 'setup', section: 'balances' },
      }
    case 'backup':
      return {
        icon: 'hard-drive',
        title: 'Save a backup file',
        sub: backupWords(check.sight, format),
        to: { place: 'setup', section: 'storage' },
      }
  }
}

function backupWords({ lastAtMs, fresh }: BackupSight, format: Format): string {
  const since = fresh === null ? '' : `, ${counted(fresh, 'new entry', 'new entries')} since`
  return lastAtMs === null
    ? 'nothing has left this tablet yet'
    : `the last one is from ${format.date(lastAtMs)}${since}`
}

const keyOf = (check: TodayCheck): string => {
  switch (check.kind) {
    case 'batch':
      return `${check.batch.id} ${check.dueAtMs}`
    case 'balance':
      return check.balance.id
    case 'backup':
      return 'backup'
  }
}

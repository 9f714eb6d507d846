/** "just now", "3 min ago", "2 h ago", "4 days ago". */
export function ago(sinceMs: number): string {
  const minutes = Math.floor(sinceMs / 60_000)
  if (minutes < 1) return 'just now'
  if (minutes < 90) return `${minutes} min ago`
  const hours = Math.round(minutes / 60)
  return hours < 48 ? `${hours} h ago` : `${Math.round(hours / 24)} days ago`
}

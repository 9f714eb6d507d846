/**
 * How wide a short line of figures will be, in em of its own font size, before it is drawn: tabular figures are
 * 0.632 em wide in every weight; letters take a generous mean. Slightly too wide is safe, too narrow is not.
 */
export const widthEm = (text: string): number => {
  let em = 0
  for (const sign of text) em += signEm(sign)
  return em
}

const signEm = (sign: string): number => {
  if (sign >= '0' && sign <= '9') return 0.632
  if (".,:' \u00a0\u202f".includes(sign)) return 0.31
  return 'mMW%'.includes(sign) ? 0.98 : 0.66
}

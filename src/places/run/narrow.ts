/** True on a phone, where the layout is one column. */
export const isNarrow = (): boolean => matchMedia('(max-width: 599px)').matches

/** How far the arrow of an over-weighing may leave its card: on a phone it ends at the edge of the screen. */
export const hornBleedPx = (): number => (isNarrow() ? 26 : 40)

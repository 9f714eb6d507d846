/** Class names joined by a space; what is absent or false is left out. */
export const classes = (...names: (string | false | null | undefined)[]): string => names.filter(Boolean).join(' ')

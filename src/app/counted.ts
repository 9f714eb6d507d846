/** "1 entry", "3 entries". */
export const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`

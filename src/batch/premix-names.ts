const start = 'premix:'

/** The id of what a pre-mix brings into a batch: its material, cup and lot after its line, its note after the weighing. */
export const premixId = (of: string): string => start + of

/** Of the step in which a dilution is made, before anything is weighed from it. */
export const isPremixNote = (step: string): boolean => step.startsWith(start)

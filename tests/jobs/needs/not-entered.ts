/** Items of the same topics that are not entered, and why. */
export const NOT_ENTERED: readonly { readonly item: string; readonly why: string }[] = [
  { item: 'Q004', why: 'entered with its numbers as J03, beside the other jobs that were told' },
  {
    item: 'Q069',
    why: 'the share of the ground under a tree that is covered: a tree stands outside the paving, and nothing there has a word'
  }
];

/**
 * The few words a widget says by itself (close, less, more ...). Everything about the trade comes in by props.
 * Worked figure: a stepper labelled "Stores" is spoken as "Stores, more".
 */
export const words = {
  back: 'Back',
  clear: 'Delete the last character',
  close: 'Close',
  decimalMark: 'Decimal mark',
  done: 'Done',
  less: 'less',
  more: 'more',
  next: 'Next',
  noSymbol: 'The symbol of this number could not be drawn here.',
  notReady: 'still working it out',
  percent: 'per cent',
  pictureFailed: 'The picture could not be drawn here. Its table has every value.',
  pictureLoading: 'Drawing the picture …',
  scrolls: 'Scrolls sideways',
  thousand: 'thousand',
} as const;

/**
 * Joins class names, dropping what doesn't apply.
 * Worked figure: classNames('ff-row', false, 'ff-row-chosen') is "ff-row ff-row-chosen".
 */
export function classNames(...names: readonly (string | false | undefined)[]): string {
  return names.filter((name) => name !== false && name !== undefined && name !== '').join(' ');
}

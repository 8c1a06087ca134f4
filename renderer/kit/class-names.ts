/** Joins the class names that are there. */
export const classes = (...names: readonly (string | false | null | undefined)[]): string =>
  names.filter(Boolean).join(' ');

/** Yes and no as SQLite keeps them: it binds no booleans. */
export type Flag = 0 | 1;
export const flag = (yes: boolean): Flag => (yes ? 1 : 0);

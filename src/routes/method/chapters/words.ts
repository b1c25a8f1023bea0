/** Where no source stands behind a rule. */
export const GUESS = 'Our choice; no published rule was found';

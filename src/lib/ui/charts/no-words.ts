/** Stands in for what reads and tells dates in words, which no chart does. */
export const match = {};
export const formatDistance = (): string => '';
export const formatRelative = (): string => '';

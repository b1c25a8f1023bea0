/** Refuses a number that is not one. @throws RangeError naming the argument and its value */
export function requireFinite(name: string, value: number): void {
	if (!Number.isFinite(value))
		throw new RangeError(`${name} must be a finite number, got ${value}`);
}

/** Refuses numbers that are not zero or more; `null` is unknown and passes. @throws RangeError */
export function requireAmount(name: string, value: number | null): void {
	if (value === null) return;
	requireFinite(name, value);
	if (value < 0) throw new RangeError(`${name} must not be negative, got ${value}`);
}

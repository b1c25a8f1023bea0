/** A chance that speaks for the ice, rounded down. @example inTenAtLeast(0.47) // => '4 in 10' */
export function inTenAtLeast(chance: number): string {
	const tenths = Math.floor(chance * 10 + 1e-9);
	if (tenths < 1) return 'under 1 in 10';
	return tenths >= 10 ? 'over 9 in 10' : `${tenths} in 10`;
}

/** A chance that speaks against it, rounded up. @example inTenAtMost(0.41) // => '5 in 10' */
export function inTenAtMost(chance: number): string {
	const tenths = Math.ceil(chance * 10 - 1e-9);
	return tenths >= 10 ? 'over 9 in 10' : `${Math.max(1, tenths)} in 10`;
}

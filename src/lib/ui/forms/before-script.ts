let isWakingUp = true;

/**
 * What somebody chose in a list before the page's script arrived, which on a slow phone takes a
 * while: the script would otherwise put the first choice back. `undefined` once the page is awake.
 */
export function chosenBeforeScript(id: string): string | undefined {
	if (typeof document === 'undefined' || !isWakingUp) return undefined;
	// The page wakes up in one go, and this runs after that.
	setTimeout(() => (isWakingUp = false));
	const list = document.getElementById(id);
	return list instanceof HTMLSelectElement ? list.value : undefined;
}

import { isForgotten } from './offline/forgotten.ts';

/** Read by the page itself before its first word (`app.html`). */
const MARK = 'frostledger-type';
const WEIGHTS = ['400', '700'];

let isHere = false;

/** Fetches the page's type once everything else stands, and marks that this device has it. */
export async function fetchType(): Promise<void> {
	const asked = WEIGHTS.map((weight) =>
		document.fonts.load(`${weight} 1rem 'Atkinson Hyperlegible'`)
	);
	const faces = await Promise.all(asked).catch(() => []);
	isHere = faces.length > 0 && faces.every(({ length }) => length > 0);
	if (!isHere || isForgotten()) return;
	try {
		localStorage.setItem(MARK, 'here');
	} catch {
		// Refused in some private windows: their pages begin without it each time.
	}
}

/** From one page to the next, when all that is in view changes anyway. */
export function showType(): void {
	if (isHere) document.documentElement.dataset['type'] = 'here';
}

/** The next page begins as the first one did. */
export function forgetType(): void {
	try {
		localStorage.removeItem(MARK);
	} catch {
		// Nothing is kept there then.
	}
}

const LONGEST_s = 7 * 86_400;

/** Seconds that a service asks to be left alone (Retry-After as seconds or as a date), or `null`. */
export function retryAfter_s(headers: Headers, now: Date): number | null {
	const text = headers.get('retry-after')?.trim() ?? '';
	if (/^\d{1,9}$/.test(text)) return Math.min(Number(text), LONGEST_s);
	const at = httpDate(text);
	if (at === null) return null;
	return Math.min(Math.max(0, Math.ceil((at.getTime() - now.getTime()) / 1000)), LONGEST_s);
}

/** Until when the same answer would come (Cache-Control before Expires), or `null`. */
export function freshUntil(headers: Headers, now: Date): Date | null {
	const control = headers.get('cache-control') ?? '';
	if (/\b(no-store|no-cache)\b/i.test(control)) return null;
	const maxAge = /\bmax-age=(\d{1,9})\b/i.exec(control)?.[1];
	const age_s = Number(headers.get('age') ?? 0) || 0;
	const at_ms =
		maxAge === undefined
			? (httpDate(headers.get('expires') ?? '')?.getTime() ?? 0)
			: now.getTime() + (Number(maxAge) - age_s) * 1000;
	const latest_ms = now.getTime() + LONGEST_s * 1000;
	return at_ms > now.getTime() ? new Date(Math.min(at_ms, latest_ms)) : null;
}

/** What tells of another month has no clock: small stations begin in 1970. Our choice. */
const NO_CLOCK_MS = 31 * 86_400_000;

/** When an answer was sent by the clock of who sent it, or `null` where that has none. */
export function sentAt(headers: Headers, now: Date): Date | null {
	const at = httpDate(headers.get('date') ?? '');
	return at && Math.abs(at.getTime() - now.getTime()) < NO_CLOCK_MS ? at : null;
}

/** A date as headers write it; other forms are read too, since services differ. */
export function httpDate(text: string): Date | null {
	if (!/\d{4}|\d{2}:\d{2}/.test(text)) return null;
	const ms = Date.parse(text);
	return Number.isFinite(ms) ? new Date(ms) : null;
}

import type { WeatherAccess } from '../../weather/access.ts';
import type { WeatherSource } from '../../weather/source/contract.ts';

/** Calls a minute of a source that states no limit. Our choice. */
const USUAL_PER_MINUTE = 30;
const MINUTE_MS = 60_000;

/** Keeps the calls of one source to so many a minute. */
export interface Pace {
	/** Resolves when so many calls may be made, or at once when the signal says stop. */
	turn(source: WeatherSource, calls: number, signal: AbortSignal): Promise<void>;
}

export function newPace({ wait }: WeatherAccess, now_ms: () => number): Pace {
	let made_ms: number[] = [];
	return {
		async turn({ limits }, calls, signal) {
			const perMinute = Math.max(limits.perMinute ?? USUAL_PER_MINUTE, calls);
			while (!signal.aborted) {
				made_ms = made_ms.filter((at_ms) => at_ms > now_ms() - MINUTE_MS);
				const tooMany = made_ms.length + calls - perMinute;
				if (tooMany <= 0) break;
				// Room comes when the earliest of those that are too many is a minute old.
				await wait((made_ms[tooMany - 1] ?? 0) + MINUTE_MS - now_ms() + 1, signal);
			}
			made_ms.push(...Array.from({ length: calls }, now_ms));
		}
	};
}

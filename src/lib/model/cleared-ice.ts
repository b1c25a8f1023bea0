import type { SiteEvent } from './site-winter.ts';

/** Whether the ice that there is was cleared: what was done to ice that has gone is gone with it. */
export function isCleared(events: readonly SiteEvent[]): boolean {
	const opened = events.filter(({ kind }) => kind === 'reopened').map(({ on }) => on);
	const last = opened.toSorted().at(-1) ?? '';
	return events.some(({ kind, on }) => kind === 'cleared' && on > last);
}

import { isSoundCore } from '../hole.ts';
import type { Reading } from '../reading.ts';
import { leastLiquid, ROTTEN } from '../rotten.ts';
import type { Members } from './members.ts';

/**
 * Lets members hold the water that the day's cores show: as much as the worst of them at least, and no
 * more than rotten ice begins with where all were sound.
 *
 * Water inside takes frost before the sheet grows, and heat melts it sooner, so that a member without it
 * would outlast ice that was seen to fall apart. A sound core that somebody else told shows nothing, nor
 * does one where the ice broke, which is a fact about its place. Our rule, cautious.
 */
export function takeCores(members: Members, today: readonly Reading[]): void {
	const here = today.filter(({ kind }) => kind !== 'wentThrough');
	const { liquidFraction, clear_m, white_m } = members;
	const least = leastLiquid(here.map(({ core }) => core));
	const isSound = here.some(isSoundCore);
	if (least === null && !isSound) return;
	for (let i = 0; i < members.count; i++) {
		if ((clear_m[i] ?? 0) + (white_m[i] ?? 0) <= 0) continue;
		const liquid = liquidFraction[i] ?? 0;
		liquidFraction[i] = least === null ? Math.min(liquid, ROTTEN) : Math.max(liquid, least);
	}
}

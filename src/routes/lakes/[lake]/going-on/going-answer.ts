import { day } from '#lib/ui/format/day.ts';
import { changesSentence } from '#lib/ui/going-on/changes-sentence.ts';
import { goingHeadline } from '#lib/ui/going-on/headline.ts';
import type { Units } from '#lib/ui/units-setting.ts';
import type { GoingOnPage } from './going-on-page.ts';

/** The page's answer; `null` where something has to be done before there is one. */
export interface GoingAnswer {
	main: string;
	rest: string[];
	/** Whether it tells of loads. */
	isTold: boolean;
}

export function goingAnswer(page: GoingOnPage, units: Units, oldSince = ''): GoingAnswer | null {
	const { ice, asOf, iceOutOn, changes } = page;
	if (!ice) return null;
	if (iceOutOn !== null)
		return { main: `Open water: ice-out was on ${day(iceOutOn)}.`, rest: [], isTold: false };
	if (!ice.day) {
		const main = `Not known for ${day(asOf)}: the weather ends before that day.`;
		return { main, rest: [], isTold: false };
	}
	const facts = { asOf, to: ice.to, snowKnown: ice.snowKnown, oldSince };
	const { main, rest, nextId } = goingHeadline(ice.loads, facts);
	const changed =
		changes && nextId ? changesSentence(changes, { loadId: nextId, asOf }, units) : null;
	return { main, rest: changed === null ? rest : [...rest, changed], isTold: true };
}

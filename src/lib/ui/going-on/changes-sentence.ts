import type { IsoDate } from '#lib/model/calendar.ts';
import { temperatureStep } from '../format/degrees.ts';
import type { Units } from '../units-setting.ts';
import { shiftWords, type Dates } from './change-words.ts';

type Load = Dates & { id: string };

interface Tried {
	colder_K: number;
	asIs: readonly Load[];
	tried: readonly { id: 'cleared' | 'coldWeek' | 'flood'; loads: readonly Load[] }[];
}

/** What would move the dates of one load, in a sentence; `null` where nothing is known of it. */
export function changesSentence(
	changes: Tried,
	{ loadId, asOf }: { loadId: string; asOf: IsoDate },
	units: Units
): string | null {
	const names = {
		cleared: 'with the snow cleared',
		coldWeek: `with a week ${temperatureStep(changes.colder_K, units)} colder`,
		flood: 'after a flood'
	};
	const of = (loads: readonly Load[]) => loads.find(({ id }) => id === loadId);
	const asIs = of(changes.asIs);
	if (!asIs) return null;
	const parts = changes.tried.flatMap(({ id, loads }) => {
		const other = of(loads);
		return other ? [`${names[id]}, ${shiftWords(asIs, other, asOf)}`] : [];
	});
	return parts.length === 0 ? null : `What would move that: ${parts.join('; ')}.`;
}

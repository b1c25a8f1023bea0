import { shortDay } from '#lib/ui/format/day.ts';
import { isPast } from '#lib/ui/is-past.ts';
import type { LakePage } from './lake-page.ts';

/** What to do next, and the page where it is done. */
export interface NextMove {
	text: string;
	link: { path: string; label: string } | null;
}

/** The most useful thing to do now; `null` in a view of the past and after ice-out. */
export function nextMove(page: LakePage): NextMove | null {
	const { ice, iceOutOn, asOf, weather } = page;
	if (!ice || iceOutOn !== null) return null;
	const hasEnded = weather.to !== null && weather.to <= asOf;
	if (isPast(page)) return hasEnded ? BRING_WEATHER : null;
	const is = (status: string) => ice.loads.some((load) => load.status === status);
	if (is('withheld')) return { text: 'Stay off. What ends it is said below.', link: null };
	if (!ice.snowKnown) return measureSnow(page);
	if (is('expectedNotDrilled')) return { text: drillText(ice.loads), link: TO_READINGS };
	if (is('reached'))
		return {
			text: 'Drill again before the holes are too old: each load below says until when they count.',
			link: TO_READINGS
		};
	return { text: 'Stay ashore: at the lower bound no load below is carried.', link: null };
}

const TO_READINGS = { path: 'readings', label: 'Add a reading' };

const BRING_WEATHER: NextMove = {
	text: 'Bring the weather up to date: without it nothing is known of today.',
	link: { path: 'weather', label: 'Add weather' }
};

/** Whoever has measured it already is not asked again: a reading counts from its day's weather on. */
function measureSnow({ lastReading, asOf }: LakePage): NextMove {
	const isMeasured =
		lastReading !== null &&
		lastReading.on > asOf &&
		lastReading.holes.some(({ snow_m }) => snow_m !== null);
	return {
		text: isMeasured
			? `The snow measured on ${shortDay(lastReading.on)} counts once the weather of that day is in: until then nothing counts as expected or reached.`
			: 'Bring in weather with precipitation, or a snow depth measured on the ice: until then nothing counts as expected or reached.',
		link: { path: 'weather', label: 'Add weather' }
	};
}

function drillText(loads: readonly { isVehicle: boolean; status: string }[]): string {
	const waiting = loads.filter(({ status }) => status === 'expectedNotDrilled');
	const onFoot = waiting.some(({ isVehicle }) => !isVehicle) ? ['three holes decide on foot'] : [];
	const vehicles = waiting.some(({ isVehicle }) => isVehicle)
		? ['five along the way decide for vehicles']
		: [];
	return `Drill: ${[...onFoot, ...vehicles].join(', ')}.`;
}

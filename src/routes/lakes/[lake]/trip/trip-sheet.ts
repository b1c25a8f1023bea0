import { holePlan } from '#lib/model/places/hole-plan.ts';
import { BROKEN_THROUGH, CHECKLIST } from '#lib/model/places/trip-advice.ts';
import type { PlacesView, RouteState, SpotState } from '#lib/server/services/places/places-view.ts';
import { age, day } from '#lib/ui/format/day.ts';
import { thickness } from '#lib/ui/format/length.ts';
import { mass } from '#lib/ui/format/mass.ts';
import { counted } from '#lib/ui/format/number.ts';
import { againWords } from '#lib/ui/places/again-words.ts';
import { holeRunWords } from '#lib/ui/places/hole-runs.ts';
import { notPlannedWords } from '#lib/ui/places/hole-words.ts';
import { KIND_WORDS } from '#lib/ui/places/kind-words.ts';
import { ROUTE_STATUS_WORDS, routeSentence } from '#lib/ui/places/route-words.ts';
import { spacingWords } from '#lib/ui/places/spacing-words.ts';
import type { TripSheetWords } from '#lib/ui/places/trip-text.ts';
import { isPast } from '#lib/ui/is-past.ts';
import { boundsSentence, verdict } from '#lib/ui/sentences.ts';
import { isAllWithheld, STATUS_WORDS } from '#lib/ui/status-words.ts';
import type { Units } from '#lib/ui/units-setting.ts';
import { weatherToWords } from '#lib/ui/weather-to-words.ts';
import type { LakeView } from '#lib/server/services/lake-view.ts';
import { lakePage, type LakePage } from '../lake-page.ts';
import { besideWords, type OtherSite } from './beside-words.ts';

/** As many as one page has room for; the rest is counted. */
const MOST_LOADS = 12;
const MOST_SPOTS = 12;
const MOST_CAUTIONS = 5;
const MOST_RUNS = 6;

export interface TripChoice {
	route: RouteState | null;
	forVehicle: boolean;
	/** When it is made, by the lake's own clock. */
	made: string;
	/** Of the site that it is of. */
	view: LakeView;
	/** `null` where the lake has one. */
	siteName: string | null;
	beside: readonly OtherSite[];
}

/** A sheet of the lake as it stands, in words. */
export function tripSheet(places: PlacesView, choice: TripChoice, units: Units): TripSheetWords {
	const page = lakePage(choice.view);
	const { ice } = page;
	const cautions = ice?.cautions ?? [];
	return {
		lake: { name: page.lake.name, isInvented: page.lake.isInvented },
		site: choice.siteName,
		beside: besideWords(choice.beside, units),
		made: choice.made,
		estimate: estimateWords(page, units),
		bounds: ice?.day && page.iceOutOn === null ? boundsSentence(ice.bounds, units) : null,
		ages: agesOf(page),
		loads: upTo(MOST_LOADS, loadsOf(page, choice.route, units)),
		cautions: upTo(MOST_CAUTIONS, [
			...cautions.filter(({ code }) => !ALWAYS.has(code)).map(({ text }) => text),
			...againOf(choice.route, units)
		]),
		always:
			'Estimates are for the open part of the site, charts for new, clear, hard ice. A drilled hole decides. Orders and removal dates of the local authorities come first.',
		spots: upTo(MOST_SPOTS, spotsOf(places.spots, choice.route, units)),
		route: choice.route && routeOf(choice.route, choice.forVehicle, places, units),
		anyWay: anyWayOf(units),
		checklist: CHECKLIST.map(({ text }) => text),
		after: BROKEN_THROUGH.map(({ text }) => text),
		sources: sourcesOf()
	};
}

const ALWAYS = new Set(['openPartOnly', 'chartsForClearIce', 'askAnEngineer', 'ordersFirst']);

function estimateWords(page: LakePage, units: Units): string {
	if (page.iceOutOn) return `Open water: ice-out was on ${day(page.iceOutOn)}.`;
	if (page.ice?.day) {
		const { main, rest } = verdict(page.ice.day, units, {
			isPast: isPast(page),
			isWithheld: isAllWithheld(page.ice.loads)
		});
		return rest === null ? main : `${main} ${rest}`;
	}
	return 'No estimate: the weather, or the day of freeze-up, is not known.';
}

function agesOf({ asOf, today, weather, weatherTo, lastReading }: LakePage): string[] {
	const told = weatherTo ? weatherToWords(weatherTo, today) : weather.to && age(weather.to, today);
	const place = lastReading?.place ? `, ${lastReading.place}` : '';
	return [
		`Estimate as of ${day(asOf)}, ${age(asOf, today)}`,
		`weather ${told ?? 'none'}`,
		lastReading ? `last reading ${age(lastReading.on, today)}${place}` : 'no reading this winter'
	];
}

/** Where wind or water ask for another look along the route. */
function againOf(route: RouteState | null, units: Units): string[] {
	if (route === null) return [];
	return route.again.flatMap((reasons, index) =>
		reasons
			.filter(({ code }) => code !== 'windNotKnown')
			.map((reason) => `${route.route.points[index]?.name ?? ''}: ${againWords(reason, units)}`)
	);
}

/** On a route its own answer, which is never better than the site's. */
function loadsOf({ ice }: LakePage, route: RouteState | null, units: Units) {
	if (route)
		return route.answer.loads.map(({ id, name, counted_kg, status }) => ({
			id,
			name: `${name}, ${mass(counted_kg, units)}`,
			status: ROUTE_STATUS_WORDS[status]
		}));
	return (ice?.loads ?? []).map(({ id, name, counted_kg, status }) => ({
		id,
		name: `${name}, ${mass(counted_kg, units)}`,
		status: STATUS_WORDS[status]
	}));
}

function anyWayOf(units: Units): string {
	const { shore, shoreReach, flow, open } = spacingWords(units);
	return `On any way: holes from the shore on, every ${shore} for ${shoreReach}, then every ${open}, every ${flow} near moving water.`;
}

/** Those of the route first, then those of which nothing is known. */
function spotsOf(spots: readonly SpotState[], route: RouteState | null, units: Units) {
	const own = new Set(route?.route.points.flatMap(({ spot }) => spot?.id ?? []));
	const rank = ({ spot, check }: SpotState) =>
		own.has(spot.id)
			? 0
			: check.state === 'broke' || check.state === 'never'
				? 1
				: check.state === 'counts'
					? 3
					: 2;
	return spots
		.toSorted((a, b) => rank(a) - rank(b))
		.map(({ spot, check }) => {
			const known =
				check.state === 'counts'
					? `${thickness(check.effective_m, units)} by its holes`
					: 'not known what it carries';
			return { id: spot.id, text: `${KIND_WORDS[spot.kind]}, ${known}: ${spot.name}` };
		});
}

function routeOf(
	{ route, answer }: RouteState,
	forVehicle: boolean,
	{ view }: PlacesView,
	units: Units
): NonNullable<TripSheetWords['route']> {
	const planned = holePlan(route, view.lake.water === 'river', forVehicle);
	const names = route.points.map(({ name }) => name);
	return {
		name: `${route.name} (${counted(route.points.length, 'point')})`,
		carries: routeSentence(answer, units),
		holes:
			planned.status === 'planned'
				? holeRunWords(planned.plan, units, MOST_RUNS)
				: notPlannedWords(planned, names, units),
		whom: forVehicle ? 'with a vehicle' : 'on foot'
	};
}

function sourcesOf(): string {
	const bodies = [...CHECKLIST, ...BROKEN_THROUGH].flatMap(({ source }) => source.split('; '));
	return [...new Set(bodies)].join('; ');
}

function upTo<Item>(most: number, items: readonly Item[]): { shown: Item[]; rest: number } {
	return { shown: items.slice(0, most), rest: Math.max(0, items.length - most) };
}

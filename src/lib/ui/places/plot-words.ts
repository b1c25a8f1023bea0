import { distance_m } from '#lib/model/distance.ts';
import type { TableRow } from '../components/ScrollTable.svelte';
import { counted } from '../format/number.ts';
import { way } from '../format/way.ts';
import type { Units } from '../units-setting.ts';
import type { PlotPlace, PlotRoute } from './plot-drawing.ts';

const STATES: Record<PlotPlace['state'], string> = {
	known: 'weak spot with holes that count',
	unknown: 'weak spot, not known what it carries',
	plain: 'point of a route'
};

export function plotSentence({
	places,
	routes
}: {
	places: readonly PlotPlace[];
	routes: readonly PlotRoute[];
}): string {
	const weak = places.filter(({ state }) => state !== 'plain').length;
	const parts = [
		...(weak > 0 ? [counted(weak, 'weak spot')] : []),
		...(weak < places.length ? [counted(places.length - weak, 'other point')] : []),
		...(routes.length > 0 ? [counted(routes.length, 'route')] : [])
	];
	return `Your own points to scale, north up: ${parts.join(', ')}. There is no shore on it.`;
}

export function plotRows(places: readonly PlotPlace[], units: Units): TableRow[] {
	const [first] = places;
	return places.map(({ id, number, name, state, position }) => ({
		id,
		cells: [
			number,
			name,
			STATES[state],
			position.latitude.toFixed(5),
			position.longitude.toFixed(5),
			first ? way(distance_m(first.position, position), units) : ''
		]
	}));
}

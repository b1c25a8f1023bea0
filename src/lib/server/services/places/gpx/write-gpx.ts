import type { Position } from '#lib/model/distance.ts';
import type { Route } from '#lib/model/places/route.ts';
import type { WeakSpot } from '#lib/model/places/weak-spot.ts';
import { plainText } from './plain-text.ts';

/** A hundredth of a metre or so. */
const DECIMALS = 7;

const CAUTION =
	'Places where the ice is weaker than its surroundings, as somebody noted them. Others are not on the list. No position says that ice carries.';

/**
 * GPX 1.1 of the weak spots with a position and of the routes whose every point has one: a route that
 * left its weak spot out would be a lie.
 */
export function writeGpx(
	lakeName: string,
	spots: readonly WeakSpot[],
	routes: readonly Route[]
): string {
	const whole = routes.filter(({ points }) => points.every(({ position }) => position !== null));
	return [
		'<?xml version="1.0" encoding="UTF-8"?>',
		'<gpx version="1.1" creator="Frostledger" xmlns="http://www.topografix.com/GPX/1/1">',
		`<metadata>${text('name', lakeName)}${text('desc', CAUTION)}</metadata>`,
		...spots.flatMap((spot) => (spot.position ? waypoint(spot, spot.position) : [])),
		...whole.map(routeOf),
		'</gpx>',
		''
	].join('\n');
}

function waypoint({ name, kind, remark }: WeakSpot, position: Position): string {
	return `<wpt ${at(position)}>${text('name', name)}${text('desc', remark)}${text('type', kind)}</wpt>`;
}

function routeOf({ name, points }: Route): string {
	const inner = points.flatMap(({ name, position, spot }) =>
		position
			? `<rtept ${at(position)}>${text('name', name)}${text('type', spot?.kind ?? null)}</rtept>`
			: []
	);
	return [`<rte>${text('name', name)}`, ...inner, '</rte>'].join('\n');
}

function at({ latitude, longitude }: Position): string {
	return `lat="${latitude.toFixed(DECIMALS)}" lon="${longitude.toFixed(DECIMALS)}"`;
}

function text(element: string, content: string | null): string {
	const plain = plainText(content, 2000);
	return plain === null ? '' : `<${element}>${escaped(plain)}</${element}>`;
}

const ESCAPES: Readonly<Record<string, string>> = {
	'&': '&amp;',
	'<': '&lt;',
	'>': '&gt;',
	'"': '&quot;',
	"'": '&apos;'
};

function escaped(content: string): string {
	return content.replace(/[&<>"']/g, (mark) => ESCAPES[mark] ?? mark);
}

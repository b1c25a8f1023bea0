import type { Route } from '#lib/model/places/route.ts';
import type { FormInput, FormValues, Refusal } from './form-input.ts';
import type { Together } from './merge-shown.ts';
import { degreesText, readPosition } from './position-input.ts';
import { fieldText, fieldUnit } from './quantity.ts';
import type { Units } from '#lib/ui/units-setting.ts';

/** Chosen for a point that is no weak spot. */
export const PLAIN = 'plain';
const FEWEST_ROWS = 3;

/** The rows of points that a form shows: those that came back, or are stored, and a few at least. */
export function pointRows(values: FormValues): number {
	const rows = Object.keys(values).map((name) => Number(/^points\.(\d+)\./.exec(name)?.[1] ?? -1));
	return Math.max(FEWEST_ROWS, ...rows.map((row) => row + 1));
}

/** The same form with one more row, for the button that adds one without script. */
export function addPointRow(values: FormValues): Refusal {
	return { values: { ...values, [`points.${pointRows(values)}.spot`]: '' }, issues: [] };
}

/** A stored route as its form shows it. */
export function routeValues(route: Route, units: Units): FormValues {
	const unit = fieldUnit('height', units);
	const points = route.points.flatMap((point, row) => {
		const at = `points.${row}.`;
		return [
			[`${at}order`, String(row + 1)],
			[`${at}spot`, point.spot?.id ?? PLAIN],
			[`${at}name`, point.spot ? '' : point.name],
			[`${at}latitude`, point.spot ? '' : degreesText(point.position?.latitude ?? null)],
			[`${at}longitude`, point.spot ? '' : degreesText(point.position?.longitude ?? null)],
			[`${at}leg_${unit.suffix}`, fieldText(point.leg_m, unit)],
			[`${at}site`, point.site]
		];
	});
	return {
		name: route.name,
		...(route.startsAtShore ? { startsAtShore: 'yes' } : {}),
		...(route.endsAtShore ? { endsAtShore: 'yes' } : {}),
		...Object.fromEntries(points)
	};
}

/**
 * The points of a route as they were typed and as they stand: a point by its row would be laid over
 * another where somebody has put one in between, so that the whole of them counts, or none.
 */
export function pointsTogether(spots: readonly { id: string; name: string }[]): Together {
	return {
		has: (field) => field.startsWith('points.'),
		at: 'points.0.spot',
		said: (stands) =>
			Array.from({ length: pointRows(stands) }, (_, row) => row)
				.filter((row) => isTyped(stands, row))
				.map((row) => {
					const chosen = stands[`points.${row}.spot`];
					return spots.find(({ id }) => id === chosen)?.name ?? stands[`points.${row}.name`] ?? '';
				})
				.join(', then ')
	};
}

/** Without the numbers and sites that empty rows come with: they are no change of any point. */
export function withoutEmptyRows(values: FormValues): FormValues {
	const isKept = ([name]: [string, string]): boolean => {
		const row = /^points\.(\d+)\.(order|site)$/.exec(name)?.[1];
		return row === undefined || isTyped(values, Number(row));
	};
	return Object.fromEntries(Object.entries(values).filter(isKept));
}

/** A route as the form gives it, still to pass the schema of the service. */
export function readRoute(input: FormInput, stored?: Route) {
	const name = input.required('name', 'Give the route a name.');
	const rows = Array.from({ length: pointRows(input.values) }, (_, row) => row)
		.filter((row) => isTyped(input.values, row))
		.map((row) => ({ row, order: orderOf(input, row) }))
		.toSorted((a, b) => a.order - b.order);
	if (rows.length < 2) {
		const free = rows[0]?.row === 0 ? 1 : 0;
		input.refuse(`points.${free}.spot`, 'A route needs two points at least: choose or name them.');
	}
	return {
		name,
		startsAtShore: input.text('startsAtShore') === 'yes',
		endsAtShore: input.text('endsAtShore') === 'yes',
		points: rows.map(({ row }) => readPoint(input, row, stored))
	};
}

function readPoint(input: FormInput, row: number, stored: Route | undefined) {
	const at = `points.${row}.`;
	const chosen = input.text(`${at}spot`);
	const name = input.text(`${at}name`);
	const before = stored?.points[row];
	const own = before?.spot ? undefined : (before?.position ?? undefined);
	const position = readPosition(input, at, own);
	const leg_m = input.quantity(`${at}leg`, 'height', {
		from: 0,
		to: 100_000,
		stored: before?.leg_m
	});
	if (chosen !== null && chosen !== PLAIN) {
		if (name !== null)
			input.refuse(
				`${at}name`,
				'A weak spot has its own name. Clear this one, or choose a plain point.'
			);
		if (position.latitude !== null || position.longitude !== null)
			input.refuse(`${at}latitude`, 'A weak spot has its own position. Clear this one.');
		return { spot: chosen, leg_m };
	}
	if (name === null) input.refuse(`${at}name`, 'Give the point a name, or clear its row.');
	else if (name.length > 120) input.refuse(`${at}name`, 'Type 120 letters at most.');
	return { name, ...position, leg_m, site: input.text(`${at}site`) ?? 'main' };
}

/** Points without a number of their own stay where they are. */
function orderOf(input: FormInput, row: number): number {
	const field = `points.${row}.order`;
	const text = input.text(field);
	if (text === null) return row + 1;
	const order = Number(text.replace(',', '.'));
	if (Number.isFinite(order)) return order;
	input.refuse(field, `“${text}” is not a number. Type the place in the order, like ${row + 1}.`);
	return row + 1;
}

/** A number or a site alone makes no point. */
function isTyped(values: FormValues, row: number): boolean {
	return Object.entries(values).some(
		([name, text]) =>
			name.startsWith(`points.${row}.`) && !/\.(order|site)$/.test(name) && text.trim() !== ''
	);
}

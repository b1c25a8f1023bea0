import type { Mapping } from '#lib/server/services/sources/mapping.ts';
import type { FormInput } from '#lib/ui/forms/form-input.ts';
import { readTypedNumber } from '#lib/ui/forms/typed-number.ts';
import { ROLE_LABELS, ROLES, type Role } from './roles.ts';

/**
 * The mapping that the fields say, still to pass the schema; `null` where no place is filled in yet.
 * A place that was left as it was keeps what has no field of its own.
 */
export function readMapping(input: FormInput, format: string): unknown {
	const text = (name: string) => input.text(`map.${name}`) ?? undefined;
	if (!text('time.path') && ROLES.every((role) => !text(`${role}.path`))) return null;
	const base = baseOf(input);
	const isCsv = format === 'csv';
	const layout = isCsv ? 'csv' : (text('layout') ?? 'columns');
	const station = present({
		name: text('station.name'),
		latitude: text('station.latitude'),
		longitude: text('station.longitude'),
		elevation_m: text('station.elevation_m')
	});
	const values = ROLES.flatMap((role) => {
		const value = valueOf(input, role, base?.values[role]);
		return value ? [[role, value]] : [];
	});
	return present({
		layout,
		rows: layout === 'rows' ? (text('rows') ?? '') : undefined,
		step: text('step') ?? 'hourly',
		time: present({
			path: text('time.path') ?? '',
			clock: text('time.clock'),
			form: text('time.form') ?? 'iso',
			zone: zoneOf(text('time.zone') ?? 'offset', text('time.zoneName') ?? ''),
			stamp: text('time.stamp') ?? 'start'
		}),
		values: Object.fromEntries(values),
		issued: text('issued'),
		station: Object.keys(station).length > 0 ? station : undefined
	});
}

function valueOf(input: FormInput, role: Role, base: Mapping['values'][Role]) {
	const field = (name: string) => `map.${role}.${name}`;
	const path = input.text(field('path'));
	if (path === null) return null;
	const kept = base?.path === path ? { time: base.time, orElse: base.orElse } : {};
	const unit = input.required(
		field('unit'),
		`Choose the unit of the ${ROLE_LABELS[role].toLowerCase()}.`
	);
	return present({
		...kept,
		path,
		unit,
		scale: numberOf(input, field('scale')),
		stamp: input.text(field('stamp')) ?? undefined,
		duration_h: numberOf(input, field('duration_h'))
	});
}

/** A typed number, `undefined` when left empty or refused. */
export function numberOf(input: FormInput, field: string): number | undefined {
	const { value, problem } = readTypedNumber(input.values[field] ?? '');
	if (problem !== null) input.refuse(field, problem);
	return value ?? undefined;
}

function zoneOf(zone: string, place: string): unknown {
	if (zone === 'name') return { name: place };
	return zone === 'path' ? { path: place } : zone;
}

/** The mapping that the fields began with. It came back from the page, so that it may be anything. */
function baseOf(input: FormInput): { values: Partial<Mapping['values']> } | null {
	try {
		const base: unknown = JSON.parse(input.values['map.base'] ?? '');
		const isMapping = typeof base === 'object' && base !== null && 'values' in base;
		return isMapping && typeof base.values === 'object' && base.values !== null
			? { values: base.values }
			: null;
	} catch {
		return null;
	}
}

function present<Fields extends object>(fields: Fields): Partial<Fields> {
	const known = Object.entries(fields).filter(([, value]) => value !== undefined);
	return Object.fromEntries(known) as Partial<Fields>;
}

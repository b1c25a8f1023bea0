import type { Call, Mapping } from '#lib/server/services/sources/mapping.ts';
import type { FormValues } from '#lib/ui/forms/form-input.ts';
import type { Together } from '#lib/ui/forms/merge-shown.ts';
import { ROLES, type Role } from './roles.ts';

/** An address and how its answer is read: half of each would read one with the places of another. */
export const WHOLE_ADDRESS: Together = {
	has: (field) =>
		/^(part|address|format|headers|chunk_d|back_d|ahead_d|lag_h)$|^(first|map)\./.test(field),
	at: 'address',
	said: ({ address = '' }) => `${address}, or read in another way`
};

/** A call as the fields of the form. */
export function callValues(call: Call): FormValues {
	const { part, address, format, headers = {}, first = [], chunk_d, reach, mapping } = call;
	const steps = first.flatMap((step, at) => [
		[`first.${at}.address`, step.address],
		[`first.${at}.next`, step.next]
	]);
	const lines = Object.entries(headers).map(([name, value]) => `${name}: ${value}`);
	return {
		part,
		address,
		format,
		headers: lines.join('\n'),
		...Object.fromEntries(steps),
		chunk_d: String(chunk_d),
		back_d: text(reach.back_d),
		ahead_d: text(reach.ahead_d),
		lag_h: text(reach.lag_h),
		...mappingValues(mapping)
	};
}

/** A mapping as the fields of the form. What has no field of its own goes along in `map.base`. */
export function mappingValues(mapping: Mapping): FormValues {
	const { layout, rows, step, time, issued, station = {}, values } = mapping;
	const { zone } = time;
	const ofRoles = ROLES.map((role) => roleValues(role, values[role]));
	const ofStation = Object.entries(station).map(([name, path]) => [`map.station.${name}`, path]);
	return {
		'map.layout': layout,
		'map.rows': rows ?? '',
		'map.step': step,
		'map.time.path': time.path,
		'map.time.clock': time.clock ?? '',
		'map.time.form': time.form,
		'map.time.zone': typeof zone === 'string' ? zone : 'name' in zone ? 'name' : 'path',
		'map.time.zoneName': typeof zone === 'string' ? '' : 'name' in zone ? zone.name : zone.path,
		'map.time.stamp': time.stamp,
		'map.issued': issued ?? '',
		...Object.fromEntries(ofStation),
		...Object.assign({}, ...ofRoles),
		'map.base': JSON.stringify(mapping)
	};
}

function roleValues(role: Role, value: Mapping['values'][Role]): FormValues {
	return {
		[`map.${role}.path`]: value?.path ?? '',
		[`map.${role}.unit`]: value?.unit ?? '',
		[`map.${role}.scale`]: text(value?.scale),
		[`map.${role}.stamp`]: value?.stamp ?? '',
		[`map.${role}.duration_h`]: text(value?.duration_h)
	};
}

function text(number: number | undefined): string {
	return number === undefined ? '' : String(number);
}

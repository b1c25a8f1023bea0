import type { FormInput } from '#lib/ui/forms/form-input.ts';
import { ROLES } from './roles.ts';

interface SchemaProblem {
	path: readonly PropertyKey[];
	message: string;
}

/** Puts what the schema of a source or of a try says beside the field that it came from. */
export function refuseSchema(input: FormInput, problems: readonly SchemaProblem[]): void {
	for (const { path, message } of problems) {
		const text = message.startsWith('must') ? `This ${message}.` : `${sentence(message)}.`;
		input.refuse(fieldAt(path.map(String)), text.replace(/\.\.$/, '.'));
	}
}

function fieldAt(path: readonly string[]): string {
	const inCall = path.slice(path[0] === 'call' ? 1 : path[0] === 'calls' ? 2 : 0);
	const [head = 'address', ...rest] = inCall;
	if (head === 'mapping') return mappingField(rest);
	if (head === 'headers') return 'headers';
	if (head === 'first') return `first.${rest[0] ?? 0}.${rest[1] ?? 'address'}`;
	return rest.at(-1) ?? head;
}

function mappingField([head, ...rest]: readonly string[]): string {
	if (head === undefined) return 'map.air.path';
	if (head === 'values') {
		const role = ROLES.find((each) => each === rest[0]) ?? 'air';
		const field = rest.includes('orElse') ? 'path' : (rest[1] ?? 'path');
		return `map.${role}.${field}`;
	}
	if (head === 'time' && rest[0] === 'zone') return 'map.time.zoneName';
	return ['map', head, ...rest].join('.');
}

function sentence(text: string): string {
	return text.charAt(0).toUpperCase() + text.slice(1);
}

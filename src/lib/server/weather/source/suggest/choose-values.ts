import type { JsonValue } from 'jsonpath-rfc9535';
import { WORDS } from '../../cells/role-words.ts';
import { VALUE_ROLES, type ValueRole } from '../../cells/units.ts';
import type { PathGuess } from '../contract.ts';
import { guessByName, type NameGuess } from './name-guess.ts';
import { isNumeric } from './series-tables.ts';
import type { Leaf, Table } from './table.ts';
import { temperatureUnit } from './temperature-unit.ts';
import { fitting, type StatedUnit } from './units-in.ts';

/** A leaf that may be what a role asks for. */
export interface Candidate {
	role: ValueRole;
	leaf: Leaf;
	guess: NameGuess;
	/** `null` where it can't be told. */
	unit: string | null;
	why: string;
}

/** For each role the leaves that may be it, the surest and shortest first. */
export function candidatesOf(
	{ leaves }: Table,
	units: ReadonlyMap<string, StatedUnit>
): Map<ValueRole, Candidate[]> {
	const all = leaves.flatMap((leaf) => candidateOf(leaf, units));
	return new Map(
		VALUE_ROLES.map((role) => [
			role,
			all.filter((candidate) => candidate.role === role).toSorted(bySureness)
		])
	);
}

export function toGuess({ role, leaf, unit, why }: Candidate): PathGuess {
	return { role, path: leaf.path, unit, why, sample: sampleOf(leaf.values) };
}

export function sampleOf(values: readonly JsonValue[]): string[] {
	return values.slice(0, 5).map((value) => (value === null ? '' : String(value).slice(0, 60)));
}

function candidateOf(leaf: Leaf, units: ReadonlyMap<string, StatedUnit>): Candidate[] {
	const guess = isNumeric(leaf.values) ? guessByName(leaf.names) : null;
	if (!guess) return [];
	const { role, name } = guess;
	const last = String(leaf.names.findLast((step) => typeof step === 'string') ?? '');
	const stated = leaf.unit ?? units.get(last) ?? null;
	const byName = `its name “${name}” says ${WORDS[role]}`;
	const known = guess.unit ?? fitting(role, stated?.unit ?? null);
	if (known !== null)
		return [{ role, leaf, guess, unit: known, why: `${byName}; the unit is stated` }];
	if (stated !== null) {
		const why = `${byName}; its unit “${stated.text.slice(0, 30)}” is not known, choose one to use it`;
		return [{ role, leaf, guess, unit: null, why }];
	}
	const { unit, why } = assumedUnit(role, leaf.values);
	return [{ role, leaf, guess, unit, why: `${byName}; ${why}` }];
}

function assumedUnit(
	role: ValueRole,
	values: readonly JsonValue[]
): { unit: string | null; why: string } {
	switch (role) {
		case 'air':
		case 'min':
		case 'max':
			return temperatureUnit(values.filter((value) => value !== null && value !== '').map(Number));
		case 'precipitation':
			return { unit: 'mm', why: 'no unit is given, and mm is assumed' };
		case 'wind':
			return { unit: 'm/s', why: 'no unit is given, and m/s is assumed; it may be km/h' };
		default:
			return { unit: null, why: 'no unit is given, and several are common; choose one to use it' };
	}
}

function bySureness(a: Candidate, b: Candidate): number {
	const length = ({ guess }: Candidate) => guess.duration_h ?? 0;
	return a.guess.rank - b.guess.rank || length(a) - length(b);
}

import type { JsonValue } from 'jsonpath-rfc9535';
import { headingOf } from '../../cells/header-roles.ts';
import { wallSeconds } from '../../cells/stamp-time.ts';
import { stampOf, textOf } from '../read/moments.ts';
import type { TimeForm } from '../schema.ts';
import type { Leaf, Table } from './table.ts';
import { timeFormOf } from './time-form.ts';

export interface TimeChoice {
	leaf: Leaf;
	path: string;
	form: TimeForm;
	/** Texts carry their offset from UTC. */
	hasOffset: boolean;
	step_s: number | null;
	/** Steps grow wider along the way, as in long forecasts. */
	isWidening: boolean;
}

const DAY_s = 86_400;

/** The times of a table: by name where several could be. */
export function timeOf({ leaves }: Table): TimeChoice | null {
	const [own] = leaves;
	if (own?.timePath) return null;
	const times = leaves.flatMap((leaf) => {
		const form = timeFormOf(leaf.values);
		return form === null ? [] : [{ leaf, form }];
	});
	const [best] = times.toSorted((a, b) => nameRank(a.leaf) - nameRank(b.leaf));
	return best ? { ...best, path: best.leaf.path, ...paceOf(best.leaf.values, best.form) } : null;
}

/** What the times themselves tell. */
export function paceOf(
	values: readonly JsonValue[],
	form: TimeForm
): Pick<TimeChoice, 'hasOffset' | 'step_s' | 'isWidening'> {
	const texts = values
		.map(textOf)
		.map((text) => (form === 'interval' ? (text.split('/')[0] ?? '') : text));
	const stamps = texts
		.map((text) => stampOf(text, form))
		.filter((stamp) => typeof stamp !== 'string');
	const walls = [...new Set(stamps.map((stamp) => wallSeconds(stamp) - (stamp.offset_s ?? 0)))];
	const sorted = walls.toSorted((a, b) => a - b);
	const gaps = sorted.slice(1).map((wall_s, at) => wall_s - (sorted[at] ?? wall_s));
	const step_s = gaps.toSorted((a, b) => a - b)[Math.floor((gaps.length - 1) / 2)] ?? null;
	return {
		hasOffset: stamps.length > 0 && stamps.every(({ offset_s }) => offset_s !== null),
		step_s,
		isWidening: gaps.some((gap) => gap > 3600 && gap < DAY_s / 2)
	};
}

export function isDaily(
	step_s: number | null,
	values: readonly JsonValue[],
	form: TimeForm
): boolean {
	if (step_s !== null) return step_s > DAY_s / 2;
	const stamp = stampOf(textOf(values[0] ?? null), form);
	return typeof stamp !== 'string' && stamp.second === null;
}

function nameRank({ names, path }: Leaf): number {
	const name = String(names.findLast((step) => typeof step === 'string') ?? path);
	const { role, rank } = headingOf(name, '');
	if (role === 'time' || role === 'date') return rank;
	return /time|date|valid|stamp/i.test(name) ? 3 : 6;
}

import { day } from '../format/day.ts';
import { counted } from '../format/number.ts';
import { isIsoDate } from '#lib/model/calendar.ts';
import type { Units } from '../units-setting.ts';
import { labelOf, valueWords } from './value-words.ts';

type Cells = Readonly<Record<string, string | number | null>>;

/** One row that was changed, as it was and as it is. */
export interface ShownChange {
	what: string;
	key: Cells;
	before: Cells | null;
	after: Cells | null;
}

/** Rows that belong to another, by what that one is known by. */
const PARTS: Readonly<Record<string, { noun: string; of: (key: Cells) => string }>> = {
	hole: { noun: 'hole', of: ({ reading_id }) => `reading ${reading_id}` },
	route_point: { noun: 'point', of: ({ route_id }) => `route ${route_id}` },
	site_event: { noun: 'event', of: ({ site_id, winter }) => `winter ${site_id} ${winter}` }
};
const KEY_OF: Readonly<Record<string, (key: Cells) => string>> = {
	reading: ({ id }) => `reading ${id}`,
	route: ({ id }) => `route ${id}`,
	winter: ({ site_id, winter }) => `winter ${site_id} ${winter}`
};
/** Told by the sentence itself, or of no account to a reader. */
const SILENT = new Set(['id', 'lake_id', 'deleted_at', 'source_id', 'reading_id']);

/** What somebody did at one time, in sentences. */
export function changeSentences(changes: readonly ShownChange[], units: Units): string[] {
	const wholes = changes.filter(({ what }) => !(what in PARTS));
	const told = wholes.map((change) => sentence(change, changes, units));
	const alone = Object.entries(PARTS).flatMap(([what, { noun, of }]) => {
		const loose = changes.filter(
			(change) => change.what === what && !wholes.some((whole) => keyOf(whole) === of(change.key))
		);
		const text = loose.length > 0 ? partWords(loose, noun, units) : null;
		return text === null ? [] : [`${capital(text)}.`];
	});
	const sentences = [...told.filter((text) => text !== null), ...alone];
	return sentences.length > 0 ? sentences : ['Stored again, unchanged.'];
}

function keyOf({ what, key }: ShownChange): string {
	return KEY_OF[what]?.(key) ?? '';
}

function sentence(change: ShownChange, all: readonly ShownChange[], units: Units): string | null {
	const { what, before, after } = change;
	const parts = Object.entries(PARTS).flatMap(([part, { noun, of }]) => {
		const own = all.filter((each) => each.what === part && of(each.key) === keyOf(change));
		const text = own.length > 0 ? partWords(own, noun, units) : null;
		return text === null ? [] : [text];
	});
	const name = nameOf(what, after ?? before ?? {}, units);
	const wasDeleted = before !== null && (before['deleted_at'] ?? null) !== null;
	const isDeleted = after === null || (after['deleted_at'] ?? null) !== null;
	if (what === 'weather' || what === 'winters') return `${capital(name)}.`;
	if (what === 'hidden_load') return `${before === null ? 'Hid' : 'Showed'} ${name}.`;
	if (before === null) return `${MADE[what] ?? 'Made'} ${[name, ...parts].join(': ')}.`;
	if (isDeleted && !wasDeleted) return `Deleted ${name}.`;
	if (wasDeleted && !isDeleted) return `Brought back ${name}.`;
	const fields = fieldWords(before, after ?? {}, units);
	const said = [...fields, ...parts];
	return said.length > 0 ? `Changed ${name}: ${said.join('; ')}.` : null;
}

const MADE: Readonly<Record<string, string>> = {
	reading: 'Logged',
	winter: 'Recorded',
	removal: 'Set',
	load_lead: 'Set',
	source_key: 'Set',
	lake_source: 'Began',
	csv_trust: 'Set'
};

/** What the thing is called in the middle of a sentence. */
function nameOf(what: string, row: Cells, units: Units): string {
	const named = (noun: string) => `${noun} ${valueWords('name', row['name'] ?? null, units)}`;
	const text = (column: string) => String(row[column] ?? '');
	const site = row['site_id'] && row['site_id'] !== 'main' ? ` of the site ${row['site_id']}` : '';
	switch (what) {
		case 'lake':
			return named('the lake');
		case 'site':
			return named('the site');
		case 'winter':
			return `the winter ${text('winter')}${site}`;
		case 'reading':
			return `the reading of ${dayOf(text('day'))}${row['place'] ? ` at ${text('place')}` : ''}${site}`;
		case 'own_load':
			return named('the load');
		case 'hidden_load':
			return `the load ${text('load_id')} on the lake’s pages`;
		case 'removal':
			return `the removal date of ${text('winter')}, ${dayOf(text('removal_on'))}`;
		case 'load_lead':
			return `the lead of the load ${text('load_id')}, ${counted(Number(row['lead_d']), 'day')}`;
		case 'weak_spot':
			return named('the weak spot');
		case 'route':
			return named('the route');
		case 'source':
			return named('the weather source');
		case 'source_key':
			return `the key of the source ${text('source_id')}`;
		case 'lake_source':
			return `the use of the source ${text('source_id')}`;
		case 'csv_trust':
			return 'the place of your own files among the sources';
		case 'weather':
			return `took in weather from a file: ${counted(Number(row['days']), 'day')}${
				row['from'] && row['to'] ? `, ${dayOf(text('from'))} to ${dayOf(text('to'))}` : ''
			}`;
		case 'winters':
			return `brought in the lake with ${counted(Number(row['winters']), 'winter')} and ${counted(Number(row['readings']), 'reading')}`;
		default:
			return what.replaceAll('_', ' ');
	}
}

function dayOf(text: string): string {
	return isIsoDate(text) ? day(text) : text;
}

function fieldWords(before: Cells, after: Cells, units: Units): string[] {
	return Object.keys(after)
		.filter((column) => !SILENT.has(column) && before[column] !== after[column])
		.map((column) => {
			const [old, now] = [before, after].map((row) =>
				valueWords(column, row[column] ?? null, units)
			);
			return `${labelOf(column)} from ${old} to ${now}`;
		});
}

/** Rows that were taken out and put in again are no change. */
function partWords(parts: readonly ShownChange[], noun: string, units: Units): string | null {
	const listed = (side: 'before' | 'after') =>
		parts.flatMap((part) => (part[side] ? [rowWords(part[side], units)] : []));
	const [before, after] = [listed('before'), listed('after')];
	if (before.join('; ') === after.join('; ')) return null;
	const now =
		after.length > 0 ? `${counted(after.length, noun)} (${after.join('; ')})` : `no ${noun}`;
	return before.length > 0 ? `${now} in place of ${before.join('; ')}` : now;
}

const NUMBERING = new Set([...SILENT, 'position', 'place', 'route_id', 'site_id', 'winter']);

function rowWords(row: Cells, units: Units): string {
	return Object.entries(row)
		.filter(([column, value]) => value !== null && !NUMBERING.has(column))
		.map(([column, value]) =>
			column === 'kind' || column === 'name'
				? String(value)
				: `${labelOf(column)} ${valueWords(column, value, units)}`
		)
		.join(', ');
}

function capital(text: string): string {
	return text.charAt(0).toUpperCase() + text.slice(1);
}

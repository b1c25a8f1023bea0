import type { IsoDate } from '../calendar.ts';
import type { Reading } from '../reading.ts';
import { counted, type Words } from '../words.ts';
import { headed, message } from './closing.ts';
import type { Message } from './message.ts';

/** A reading that was logged, in words. Who took it, and remarks, stay at home. */
export function readingMessage(reading: Reading, words: Words): Message {
	const { kind, on, place, secondHand } = reading;
	const at = place === null ? '' : ` at ${place}`;
	const day = words.day(on);
	const from = secondHand ? 'Somebody else told it.' : null;
	if (kind === 'wentThrough') {
		const title = headed(`The ice broke${at} on ${day}`);
		const text = message(
			`Somebody or something broke through${at} on ${day}.`,
			from,
			'The ice there is not what the site is estimated to have: keep away from it.'
		);
		return { kind: 'wentThrough', loadId: null, on, title, text };
	}
	const found = foundText(reading, words);
	const title = headed(`Reading of ${day}${at}, ${found}`);
	const text = message(`${holesText(reading, on, words)}${at}: ${found}.`, from, coreText(reading));
	return { kind: 'readingLogged', loadId: null, on, title, text };
}

function holesText({ kind, holes }: Reading, on: IsoDate, words: Words): string {
	const count = counted(Math.max(1, holes.length), 'hole');
	const how = kind === 'atLeast' ? 'not drilled through' : 'drilled';
	return `${count} ${how} on ${words.day(on)}`;
}

/** The thinnest and the thickest hole, rounded down. */
function foundText({ kind, holes }: Reading, words: Words): string {
	const totals_m = holes.flatMap(({ total_m, clear_m, white_m }) => {
		const known_m = total_m ?? (clear_m !== null && white_m !== null ? clear_m + white_m : null);
		return known_m === null ? [] : [known_m];
	});
	if (totals_m.length === 0) return 'whole thickness not measured';
	const thinnest = words.thickness(Math.min(...totals_m));
	const thickest = words.thickness(Math.max(...totals_m));
	const least = kind === 'atLeast' ? 'at least ' : '';
	return thinnest === thickest ? `${least}${thinnest}` : `${least}${thinnest} to ${thickest}`;
}

function coreText({ core }: Reading): string | null {
	if (core === null) return null;
	return core === 'sound' ? 'The core was sound.' : `The core was ${core}: stay off.`;
}

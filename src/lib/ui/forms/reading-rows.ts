import type { Reading } from '#lib/model/reading.ts';
import { day } from '../format/day.ts';
import type { Units } from '../units-setting.ts';
import { CORE_WORDS, holesWords, KIND_WORDS } from './reading-words.ts';

type Told = Omit<Reading, 'id'>;

/** Two versions of a reading side by side, a field a row; what neither has is left out. */
export function readingRows(
	first: Told,
	second: Told,
	units: Units
): { name: string; first: string; second: string }[] {
	const [a, b] = [wordsOf(first, units), wordsOf(second, units)];
	return Object.keys(a)
		.map((name) => ({ name, first: a[name] || 'not told', second: b[name] || 'not told' }))
		.filter((row) => row.first !== row.second || row.first !== 'not told');
}

function wordsOf(reading: Told, units: Units): Record<string, string> {
	const { on, place, kind, holes, core, by, secondHand, remark } = reading;
	return {
		Day: day(on),
		Where: place ?? '',
		'How it went': KIND_WORDS[kind],
		Holes: holes.map((hole) => holesWords({ kind, holes: [hole] }, units)).join('; '),
		Core: core ? CORE_WORDS[core] : '',
		'Measured by': by ?? '',
		'Told by somebody else': secondHand ? 'yes' : '',
		Remark: remark ?? ''
	};
}

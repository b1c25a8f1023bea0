import { expect, test } from 'vitest';
import { rowDates } from '../../../src/routes/lakes/[lake]/row-dates.ts';

const NONE = { expectedFrom: null, likelyFrom: null, until: null };

test('a row names the days that are estimated, and nothing else', () => {
	expect(rowDates(NONE)).toBeNull();
	expect(rowDates({ ...NONE, expectedFrom: '2027-01-06' })).toBe('expected from 6 Jan');
	const all = { expectedFrom: '2027-01-06', likelyFrom: '2027-01-17', until: '2027-03-02' };
	expect(rowDates(all)).toBe('expected from 6 Jan, likely from 17 Jan, until 2 Mar');
});

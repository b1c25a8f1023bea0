import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { trackIceOut } from '#lib/model/ensemble/ice-out.ts';

/** The window of members whose clear ice is given day by day from 1 April. */
function windowOf(members: readonly (readonly number[])[], slush_m: readonly number[] = []) {
	const tracker = trackIceOut(members.length);
	const length = Math.max(0, ...members.map((thickness) => thickness.length));
	for (let day = 0; day < length; day++) {
		tracker.see(addDays('2027-04-01', day), {
			clear_m: members.map((thickness) => thickness[day] ?? 0),
			white_m: members.map(() => 0),
			slush_m
		});
	}
	return tracker.window();
}

/** Open on the day with this index, of so many. */
function opening(index: number, length = 12): number[] {
	return Array.from({ length }, (_, day) => (day < index ? 0.3 - 0.02 * day : 0));
}

test('ten members that open a day after each other have their quantiles there', () => {
	const members = Array.from({ length: 10 }, (_, i) => opening(i + 1));
	expect(windowOf(members)).toEqual({
		p10: '2027-04-02',
		p50: '2027-04-06',
		p90: '2027-04-10',
		neverFraction: 0
	});
});

test('members that stay frozen come last and are counted', () => {
	const members = [opening(2), opening(3), opening(4), opening(99), opening(99)];
	const result = windowOf(members);
	expect(result).toMatchObject({ p10: '2027-04-03', p50: '2027-04-05', p90: null });
	expect(result?.neverFraction).toBeCloseTo(0.4, 9);
});

test('ice that came and went before the thickest day is no ice-out', () => {
	expect(windowOf([[0, 0.1, 0, 0, 0.2, 0.3, 0.1, 0, 0]])?.p50).toBe('2027-04-08');
});

test('a skim that forms after the ice-out does not move it', () => {
	expect(windowOf([[0.3, 0.1, 0, 0.02, 0, 0.01]])?.p50).toBe('2027-04-03');
});

test('slush alone is not open water', () => {
	expect(windowOf([[0.3, 0, 0]], [0.05])?.neverFraction).toBe(1);
});

test('members that never had ice say nothing, and without any there is no window', () => {
	expect(windowOf([[0, 0, 0], opening(2)])).toMatchObject({ p50: '2027-04-03', neverFraction: 0 });
	expect(windowOf([[0, 0, 0]])).toBeNull();
	expect(windowOf([])).toBeNull();
});

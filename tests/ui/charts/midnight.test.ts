import { parseISO } from 'date-fns';
import { expect, test } from 'vitest';
import { midnightOf } from '#lib/ui/charts/midnight.ts';

test('a day begins where date-fns has it begin, also when the clocks change, and asked for again', () => {
	for (const on of ['2026-01-01', '2026-03-29', '2026-10-25', '2024-02-29', '2026-12-31']) {
		const whole = parseISO(on).getTime();
		expect(midnightOf(on)).toBe(whole);
		expect(midnightOf(on)).toBe(whole);
	}
});

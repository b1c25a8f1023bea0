import { expect, test } from 'vitest';
import { paceOf } from '#lib/server/weather/csv/pace.ts';

test('the pace of a record is told from its shortest common step', () => {
	const pace = (hours: readonly number[]) =>
		paceOf(hours.map((hour) => ({ wall_s: hour * 3600, hasClock: true })));
	expect(pace([0, 1, 2, 5, 6])).toMatchObject({ step: 'hourly', step_s: 3600, newestFirst: false });
	expect(pace([6, 3, 0])).toMatchObject({ step: 'hourly', step_s: 10_800, newestFirst: true });
	expect(pace([0, 24, 48, 168])).toMatchObject({ step: 'daily' });
	expect(pace([13])).toMatchObject({ step: 'hourly' });
	expect(pace([24])).toMatchObject({ step: 'daily' });
	expect(pace([0, 168, 336])).toMatch(/7 days apart/);
	expect(pace([0, 5, 10, 15])).toMatch(/5 hours apart/);
});

import { expect, test } from 'vitest';
import { gatherFacts } from '#lib/model/telling/gather.ts';
import { outlook } from '#lib/model/outlook.ts';
import { asked } from '../../support/invented-winter.ts';

const TODAY = '2027-01-30';

test('a load that was only expected is told the day to be off too, one that was not is not', () => {
	const answer = outlook(asked(Array.from({ length: 60 }, () => -10)));
	if (!answer) throw new Error('no outlook');
	const { forecast } = answer;
	const [load] = forecast.loads;
	if (!load) throw new Error('no load');
	const offBy = (expectedFrom: string | null) => {
		const loads = [{ ...load, expectedFrom, likelyFrom: null }];
		return gatherFacts({
			site: null,
			outlook: { ...answer, forecast: { ...forecast, loads } },
			loads: [load.id],
			today: TODAY,
			readings: [],
			readingAfter_d: 7,
			observed: null,
			removalOn: null,
			offBy: new Map([[load.id, TODAY]])
		}).loads[0]?.offBy;
	};
	expect(offBy('2027-01-20')).toBe(TODAY);
	expect(offBy('2027-01-31')).toBeNull();
	expect(offBy(null)).toBeNull();
});

import { expect, test } from 'vitest';
import type { LoadStatus } from '#lib/model/forecast.ts';
import type { Outlook } from '#lib/model/outlook.ts';
import type { LakeView } from '#lib/server/services/lake-view.ts';
import { lakePage } from '../../../src/routes/lakes/[lake]/lake-page.ts';
import { nextMove, type NextMove } from '../../../src/routes/lakes/[lake]/next-move.ts';
import {
	inventedForecast,
	inventedLoad,
	inventedOutlook,
	inventedView
} from '../../support/invented-view.ts';
import { measuredReading } from '../../support/measured-reading.ts';

/** Somebody's next move with loads that stand like this, on foot first. */
function move(
	statuses: readonly LoadStatus[],
	facts: Partial<Outlook> = {},
	view: Partial<LakeView> = {}
): NextMove | null {
	const ids = ['on-foot', 'snowmobile'];
	const loads = statuses.map((status, index) =>
		inventedLoad({ id: ids[index] ?? 'car', name: ids[index] ?? 'car', status })
	);
	const forecast = inventedForecast({ loads, cautions: [] });
	const outlook = inventedOutlook({ ...facts, forecast });
	return nextMove(lakePage(inventedView({ today: '2027-02-10', outlook, ...view })));
}

test('what is expected asks for holes, as many as its kind needs', () => {
	expect(move(['expectedNotDrilled', 'notYet'])).toEqual({
		text: 'Drill: three holes decide on foot.',
		link: { path: 'readings', label: 'Add a reading' }
	});
	expect(move(['reached', 'expectedNotDrilled'])?.text).toBe(
		'Drill: five along the way decide for vehicles.'
	);
});

test('a thaw comes before everything that could be drilled', () => {
	expect(move(['withheld', 'expectedNotDrilled'])).toMatchObject({
		text: expect.stringContaining('Stay off'),
		link: null
	});
});

test('where nothing is carried nobody is sent out', () => {
	expect(move(['notYet', 'notYet'])).toMatchObject({
		text: expect.stringContaining('Stay ashore'),
		link: null
	});
});

test('unknown snow is asked for first', () => {
	expect(move(['notYet'], { snowKnown: false })?.link?.path).toBe('weather');
});

test('snow that was measured after the last weather is not asked for again', () => {
	const text = (snow_m: number | null) =>
		move(
			['notYet'],
			{ snowKnown: false },
			{
				asOf: '2027-02-09',
				readings: [measuredReading('new', '2027-02-10', { total_m: 0.2, snow_m })]
			}
		)?.text;
	expect(text(0.03)).toMatch(
		/^The snow measured on 10 Feb counts once the weather of that day is in/
	);
	expect(text(null)).toMatch(/^Bring in weather with precipitation/);
});

test('what is reached is to be drilled again', () => {
	expect(move(['reached', 'askAnEngineer'])?.text).toContain('Drill again');
});

test('old weather is brought up to date, and a look back asks for nothing', () => {
	const weather = { ...inventedView().weather, to: '2027-02-10' };
	expect(move(['reached'], {}, { today: '2027-02-20', weather })?.link?.path).toBe('weather');
	const more = { ...weather, to: '2027-02-19' };
	expect(move(['reached'], {}, { today: '2027-02-20', weather: more })).toBeNull();
});

test('after ice-out there is no next move', () => {
	const record = { ...inventedView().record, iceOutOn: '2027-02-01' };
	expect(move(['withheld'], {}, { record })).toBeNull();
});

test('without an estimate the page itself says what is missing', () => {
	expect(nextMove(lakePage(inventedView({ status: 'noWeather', outlook: null })))).toBeNull();
});

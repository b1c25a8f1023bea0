import { expect, test } from 'vitest';
import { planRefresh, type Brought } from '../../../../src/lib/server/services/refresh/plan.ts';
import { inventedSource } from '../../../support/invented-source.ts';

const NOTHING: Brought = {
	today: '2027-01-20',
	freezeUpOn: '2026-11-20',
	lastOn: null,
	askedOn: null,
	askedFrom: null
};

const plan = (brought: Partial<Brought>, source = inventedSource()) =>
	planRefresh(source, { ...NOTHING, ...brought });

test('at first the winter is asked for from freeze-up, the latest days first', () => {
	const { history, newSpans, forecast } = plan({});
	expect(newSpans).toBe(1);
	expect(history).toEqual([
		{ from: '2027-01-18', to: '2027-01-20' },
		{ from: '2026-12-18', to: '2027-01-17' },
		{ from: '2026-11-17', to: '2026-12-17' }
	]);
	expect(forecast).toEqual({ from: '2027-01-20', to: '2027-01-30' });
});

test('later only what is new is asked for, with the last day again', () => {
	const brought = { askedFrom: '2026-11-17', lastOn: '2027-01-20', askedOn: '2027-01-20' };
	expect(plan(brought)).toMatchObject({
		history: [{ from: '2027-01-19', to: '2027-01-20' }],
		newSpans: 1
	});
});

test('after the app was off for long, all that was missed is asked for', () => {
	const brought = { askedFrom: '2026-11-17', lastOn: '2026-12-01', askedOn: '2026-12-01' };
	expect(plan(brought).history).toEqual([
		{ from: '2026-11-30', to: '2026-12-30' },
		{ from: '2026-12-31', to: '2027-01-20' }
	]);
});

test('a station that has been dead for long is not asked for its whole silence each time', () => {
	const brought = { askedFrom: '2026-07-01', lastOn: '2026-08-01', askedOn: '2027-01-20' };
	const { history } = plan({ ...brought, freezeUpOn: null });
	expect(history).toEqual([
		{ from: '2026-12-20', to: '2027-01-19' },
		{ from: '2027-01-20', to: '2027-01-20' }
	]);
});

test('a back-fill that was broken off goes on where it was', () => {
	const brought = { askedFrom: '2026-12-18', lastOn: '2027-01-20', askedOn: '2027-01-20' };
	const { history, newSpans } = plan(brought);
	expect(newSpans).toBe(1);
	expect(history.slice(1)).toEqual([{ from: '2026-11-17', to: '2026-12-17' }]);
});

test('an earlier freeze-up that is recorded later widens what is wanted', () => {
	const brought = { askedFrom: '2026-11-17', lastOn: '2027-01-20', askedOn: '2027-01-20' };
	const { history } = plan({ ...brought, freezeUpOn: '2026-11-10' });
	expect(history.slice(1)).toEqual([{ from: '2026-11-07', to: '2026-11-16' }]);
});

test('without a freeze-up thirty days are wanted, and never another winter’s', () => {
	expect(plan({ freezeUpOn: null }).wantedFrom).toBe('2026-12-21');
	expect(plan({ freezeUpOn: null, today: '2026-07-10' }).wantedFrom).toBe('2026-07-01');
});

test('a source that reaches back ten days is asked for ten, once', () => {
	const source = inventedSource();
	const calls = source.calls.map((call) => ({ ...call, reach: { back_d: 10, ahead_d: 3 } }));
	const short = { ...source, calls };
	expect(plan({}, short)).toMatchObject({
		history: [{ from: '2027-01-10', to: '2027-01-20' }],
		wantedFrom: '2026-11-17',
		forecast: { from: '2027-01-20', to: '2027-01-23' }
	});
	const after = { askedFrom: '2026-11-17', lastOn: '2027-01-20', askedOn: '2027-01-20' };
	expect(plan(after, short).history).toHaveLength(1);
});

test('a long span that a source would answer at once is still asked for in parts', () => {
	const source = inventedSource();
	const calls = source.calls.map((call) => ({ ...call, chunk_d: 400 }));
	const { history } = plan({ freezeUpOn: '2026-08-01' }, { ...source, calls });
	expect(history.map(({ from }) => from)).toEqual(['2026-10-29', '2026-07-29']);
});

test('a source of forecasts alone is asked for nothing else', () => {
	const source = inventedSource();
	const calls = source.calls.filter(({ part }) => part === 'forecast');
	expect(plan({}, { ...source, calls })).toMatchObject({ history: [], newSpans: 0 });
	const past = source.calls.filter(({ part }) => part === 'history');
	expect(plan({}, { ...source, calls: past }).forecast).toBeNull();
});

import { expect, test } from 'vitest';
import { goingHeadline, type GoingLoad } from '#lib/ui/going-on/headline.ts';

const FACTS = { asOf: '2027-02-10', to: '2027-05-20', snowKnown: true };

function load(change: Partial<GoingLoad>): GoingLoad {
	return {
		id: 'car',
		mark: 'car',
		status: 'notYet',
		expectedFrom: null,
		likelyFrom: null,
		until: null,
		met_percent: 30,
		...change
	};
}

const ON_FOOT = load({
	id: 'on-foot',
	mark: 'on foot',
	status: 'reached',
	expectedFrom: '2026-12-10',
	likelyFrom: '2026-12-20',
	until: '2027-04-20'
});
const ahead = load({ expectedFrom: '2027-02-20', likelyFrom: '2027-03-01' });

test('the load that comes next is named with its days and how sure they are', () => {
	const { main, rest, nextId } = goingHeadline([ON_FOOT, ahead], FACTS);
	expect(main).toBe('Next, car: expected from 20 Feb, likely from 1 Mar.');
	expect(rest.join(' ')).toContain('the chance is 3 in 10');
	expect(rest.join(' ')).toContain('and drilled: on foot.');
	expect(nextId).toBe('car');
});

test('of an old copy nothing counts as drilled now', () => {
	const { rest } = goingHeadline([ON_FOOT, ahead], { ...FACTS, oldSince: '9 Feb, 08:00' });
	expect(rest.join(' ')).toContain(
		'Not known now. As it stood on 9 Feb, 08:00, met at the lower bound and drilled: on foot.'
	);
});

test('of two the one with the earlier day comes first, a likely day counting where the other is past', () => {
	const truck = load({ id: 'truck', mark: 'truck', expectedFrom: '2027-02-18' });
	expect(goingHeadline([ahead, truck], FACTS).main).toBe(
		'Next, truck: expected from 18 Feb, on no day likely.'
	);
	const near = load({ expectedFrom: '2027-02-08', likelyFrom: '2027-02-14' });
	expect(goingHeadline([near, truck], FACTS).main).toBe(
		'Next, car: expected since 8 Feb, likely from 14 Feb.'
	);
});

test('a warm spell comes before every day', () => {
	const withheld = { ...ON_FOOT, status: 'withheld' as const };
	expect(goingHeadline([withheld, ahead], FACTS).main).toBe(
		'Stay off today, whatever the ice measures.'
	);
});

test('without known snow no day is named', () => {
	const { main, nextId } = goingHeadline([ahead], { ...FACTS, snowKnown: false });
	expect(main).toContain('No day can be named');
	expect(nextId).toBeNull();
});

test('where nothing more comes it says so, and when what is met ends', () => {
	expect(goingHeadline([ON_FOOT, load({})], FACTS).main).toBe(
		'Nothing heavier than on foot is expected by 20 May.'
	);
	expect(goingHeadline([ON_FOOT], FACTS).main).toBe(
		'All of it meets the charts at the lower bound, the first of it until 20 Apr.'
	);
	expect(goingHeadline([load({})], FACTS).main).toBe('Nothing here is expected by 20 May.');
	const past = load({ expectedFrom: '2026-12-10', likelyFrom: null, until: '2027-02-01' });
	expect(goingHeadline([past], FACTS).main).toBe('Past: the last of it was expected until 1 Feb.');
});

test('what only an engineer can judge is neither next nor met', () => {
	const shelter = load({ id: 'x', mark: 'shelter', status: 'askAnEngineer' });
	const { main, rest } = goingHeadline([ON_FOOT, shelter], FACTS);
	expect(main).toContain('All of it meets');
	expect(rest).toContain('Only an ice engineer can say: shelter.');
});

test('what is as likely as not already is not said to be expected by no day', () => {
	const doubtful = load({ expectedFrom: '2027-02-04', likelyFrom: null, until: '2027-02-14' });
	expect(goingHeadline([ON_FOOT, doubtful], FACTS).main).toBe(
		'Nothing heavier than on foot is likely by 20 May.'
	);
});

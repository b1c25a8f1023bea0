import { expect, test } from 'vitest';
import type { Leaving } from '#lib/model/leaving/leaving.ts';
import { comingOffHeadline } from '#lib/ui/leaving/headline.ts';
import { offRows } from '#lib/ui/leaving/off-words.ts';
import { thawFacts } from '#lib/ui/leaving/strength-words.ts';
import type { ComingOffData, LeavingLoad } from '#lib/ui/leaving/told.ts';
import type { Units } from '#lib/ui/units-setting.ts';

const UNITS: Units = { measure: 'metric', mass: 'kg' };
const NOW = '2027-03-01';

const leaving: Leaving = {
	warmLast_h: 0,
	peakOn: NOW,
	thawSincePeak_degCd: 0,
	lost: { p10_m: 0, p50_m: 0, p90_m: 0 },
	thinnerSince: null,
	isSunOnBareIce: false,
	strength: {
		state: 'inFrost',
		text: 'No warm-spell rule is in force.',
		rule: null,
		leftFraction: 1
	},
	nights: [],
	spellFrom: null,
	toldTo: '2027-06-30',
	loads: [],
	slush: null,
	texts: {
		warmth: '',
		lost: 'No ice has been lost.',
		nights: '',
		spell: '',
		iceOut: '',
		slush: null,
		shore: ''
	}
};

const off = (on: string | null, lead_d = 0) => ({
	on,
	reason: on === null ? null : ('thickness' as const),
	beginOn: on === null ? null : '2027-03-13',
	lead_d
});

function load(id: string, change: Partial<LeavingLoad> = {}): LeavingLoad {
	return {
		id,
		name: id,
		required_m: 0.4,
		isDoubled: false,
		wasExpected: true,
		median: { kind: 'until', on: '2027-03-30' },
		warmEnd: { kind: 'until', on: '2027-03-20' },
		offBy: off('2027-03-20'),
		byIce: off('2027-03-20'),
		isLeadTyped: false,
		isEndedBySnow: false,
		...change
	};
}

function told(change: Partial<ComingOffData> = {}, of: Partial<Leaving> = {}): ComingOffData {
	return {
		asOf: NOW,
		today: NOW,
		now: NOW,
		iceOutOn: null,
		removalOn: null,
		leaving: { ...leaving, ...of, loads: [load('car')] },
		...change
	};
}

const strength = (state: Leaving['strength']['state']) => ({
	strength: { ...leaving.strength, state, text: 'The core was wet.' }
});

test('the headline names the first to come off by the ice, and where all go that day', () => {
	expect(comingOffHeadline(told()).main).toBe(
		'By the ice alone everything off by 20 Mar, in 19 days: in one case of ten the ice is too thin after that.'
	);
	const later = load('foot', { byIce: off('2027-04-20') });
	const two = told({ leaving: { ...leaving, loads: [load('car'), later] } });
	expect(comingOffHeadline(two).main).toMatch(/^By the ice alone the first to come off: car, by/);
});

test('where snow ends the days of what stands, the snow is named and not the thickness', () => {
	const byIce = { ...off('2027-03-20', 7), reason: 'snow' as const };
	const shelter = load('shelter', { byIce, offBy: byIce, isEndedBySnow: true });
	const answer = told({ leaving: { ...leaving, loads: [shelter] } });
	expect(comingOffHeadline(answer).main).toMatch(/in one case of ten snow sinks the ice under it/);
	const [row] = offRows(answer, UNITS);
	expect(row?.off).toBe('Off by 20 Mar, in 19 days: snow may sink it after that');
	expect(row?.days).toMatch(/^Above the water to 20 Mar in nine cases of ten/);
	const now = { ...byIce, on: NOW };
	const today = told({ leaving: { ...leaving, loads: [{ ...shelter, offBy: now }] } });
	expect(offRows(today, UNITS)[0]?.off).toBe('Off now: the snow on the ice may sink it');
});

test('the local removal date comes before anything that is estimated', () => {
	const { main, rest } = comingOffHeadline(told({ removalOn: '2027-03-15' }));
	expect(main).toBe('Everything off by 15 Mar, in 14 days: the local removal date.');
	expect(rest[0]).toMatch(/^By the ice alone/);
});

test('where the ice sends something off sooner than the local date, that is said first', () => {
	const { main, rest } = comingOffHeadline(told({ removalOn: '2027-03-25' }));
	expect(main).toMatch(/^By the ice alone everything off by 20 Mar/);
	expect(rest[0]).toBe('The local removal date is 25 Mar, in 24 days.');
});

test.each([
	['closed', /^Stay off: the thaw/],
	['rotten', /^Stay off: the ice is rotten/],
	['open', /^Stay off: by the estimate no ice/]
] as const)('ice that is %s closes it before any date', (state, main) => {
	const answer = comingOffHeadline(told({ removalOn: '2027-03-15' }, strength(state)));
	expect(answer.main).toMatch(main);
	expect(answer.rest[0]).toMatch(/local removal date is 15 Mar/);
});

test('after ice-out, and without an estimate, the headline says so', () => {
	expect(comingOffHeadline(told({ iceOutOn: '2027-02-27' })).main).toMatch(/^Open water/);
	expect(comingOffHeadline(told({ leaving: null })).main).toMatch(/^Not known for 1 Mar 2027/);
});

test('a load that is not on and not likely to be sends nobody off', () => {
	const young = load('sled', {
		wasExpected: false,
		warmEnd: { kind: 'never' },
		offBy: off(NOW),
		byIce: off(NOW)
	});
	const data = told({ leaving: { ...leaving, loads: [young] } });
	expect(comingOffHeadline(data).main).toMatch(
		/^By the ice alone, nothing has to be off by 30 Jun/
	);
	expect(offRows(data, UNITS)[0]?.off).toMatch(/^Off now, if it is on/);
});

test('loads that share their days share a row', () => {
	const loads = [load('car'), load('pickup'), load('foot', { required_m: 0.15 })];
	const rows = offRows(told({ leaving: { ...leaving, loads } }), UNITS);
	expect(rows.map(({ names }) => names)).toEqual(['car, pickup', 'foot']);
	expect(rows[0]).toMatchObject({
		asks: 'asks 40 cm',
		off: 'Off by 20 Mar, in 19 days: by the thickness',
		begin: null,
		days: 'Thick enough to 20 Mar in nine cases of ten, to 30 Mar as likely as not.'
	});
});

test('the days to get it free are told as our choice until somebody types them', () => {
	const rowOf = (change: Partial<LeavingLoad>) =>
		offRows(told({ leaving: { ...leaving, loads: [load('house', change)] } }), UNITS)[0];
	expect(rowOf({ offBy: off('2027-03-20', 7) })?.begin).toBe(
		'Begin by 13 Mar, in 12 days: 7 days to free it, our choice'
	);
	expect(rowOf({ offBy: off('2027-03-20', 7), isLeadTyped: true })?.begin).toBe(
		'Begin by 13 Mar, in 12 days: 7 days to free it'
	);
	const never = { median: { kind: 'never' }, warmEnd: { kind: 'never' } } as const;
	expect(rowOf({ ...never, offBy: off(NOW, 7), wasExpected: false })).toMatchObject({
		off: 'Not on: not expected to be met',
		begin: null
	});
	expect(rowOf({ ...never, offBy: off(NOW, 7) })?.off).toMatch(/^Off now: no longer/);
	expect(rowOf({ required_m: null, offBy: off(null) })).toMatchObject({
		asks: 'for an engineer',
		off: 'By an engineer and the local rules'
	});
});

test('the facts of the thaw have their doubt beside them', () => {
	const facts = thawFacts(
		{
			...leaving,
			...strength('weakened'),
			warmLast_h: 6.2,
			peakOn: '2027-02-20',
			thawSincePeak_degCd: 12,
			lost: { p10_m: 0.01, p50_m: 0.05, p90_m: 0.09 }
		},
		NOW,
		UNITS
	);
	const of = (name: RegExp) => facts.find((fact) => name.test(fact.name));
	expect(of(/Above freezing/)?.value).toBe('7 h');
	expect(of(/^Thaw/)).toMatchObject({ value: '12 °C·d', note: 'since 20 Feb' });
	expect(of(/lost/)).toMatchObject({ value: '5 cm', note: 'eight spots of ten 1 cm to 9 cm' });
});

test('a thinner hole since is named beside what the weather took, which is not told as all', () => {
	const facts = thawFacts(
		{ ...leaving, thinnerSince: { on: '2027-03-02', total_m: 0.21 } },
		NOW,
		UNITS
	);
	const of = (name: RegExp) => facts.find((fact) => name.test(fact.name));
	expect(of(/^Seen since/)).toMatchObject({ value: '21 cm', note: 'on 2 Mar' });
	expect(of(/lost/)?.note).toBe('by the weather to 1 Mar');
	expect(of(/^Thaw/)?.note).toBe('by the weather to 1 Mar');
});

test('nothing that the page says is a permission', () => {
	const data = told({ removalOn: '2027-03-15' });
	const texts = JSON.stringify([comingOffHeadline(data), offRows(data, UNITS)]);
	expect(texts).not.toMatch(/\bsafe|may go|carries\b/i);
});

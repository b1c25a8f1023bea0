import { expect, test } from 'vitest';
import { answerOf, type IfAnswer } from '#lib/ui/what-if/answer.ts';
import { addedWords, snowWords, warmingWords } from '#lib/ui/what-if/change-words.ts';
import { compare } from '#lib/ui/what-if/compare.ts';
import { heavier } from '#lib/ui/what-if/heavier.ts';
import { inventedFuture } from '../../support/invented-future.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;
const IMPERIAL = { measure: 'imperial', mass: 'lb' } as const;
const BASE = answerOf(inventedFuture());

function rowOf(id: string, other: IfAnswer | null) {
	return compare(BASE, other, METRIC).find((row) => row.id === id);
}

function withCar(changes: Partial<IfAnswer['loads'][number]>): IfAnswer {
	return {
		...BASE,
		loads: BASE.loads.map((load) => (load.id === 'car' ? { ...load, ...changes } : load))
	};
}

test('before there is an answer only what is stands there', () => {
	for (const { other, shift } of compare(BASE, null, METRIC)) {
		expect([other, shift]).toEqual([null, null]);
	}
	expect(rowOf('ahead', null)).toMatchObject({
		name: 'Ice on 9 Feb',
		asIs: '41 cm, nine holes in ten 35 to 47'
	});
	expect(rowOf('peak', null)?.asIs).toBe('52 cm on 25 Mar');
});

test('dates that move are told with how far', () => {
	const sooner = withCar({ expectedFrom: '2027-02-05', until: '2027-04-01' });
	expect(rowOf('load car', sooner)).toEqual({
		id: 'load car',
		name: 'Car, asks 38 cm',
		asIs: 'expected 13 Feb, on no day likely, until 31 Mar',
		other: 'expected 5 Feb, on no day likely, until 1 Apr',
		shift: 'expected 8 days sooner, ends 1 day later'
	});
});

test('loads that ask the same and fare the same share a row', () => {
	const twin = (answer: IfAnswer): IfAnswer => ({
		...answer,
		loads: answer.loads.flatMap((load) =>
			load.id === 'car' ? [load, { ...load, id: 'van', name: 'Van' }] : [load]
		)
	});
	const names = (other: IfAnswer) => compare(twin(BASE), other, METRIC).map(({ name }) => name);
	expect(names(twin(BASE))).toContain('Car; Van, asks 38 cm');
	expect(names({ ...twin(BASE), loads: withCar({ until: '2027-04-01' }).loads })).toContain(
		'Car, asks 38 cm'
	);
});

test('a date that comes or goes is no shift', () => {
	expect(rowOf('load car', withCar({ likelyFrom: '2027-03-01' }))).toMatchObject({
		other: 'expected 13 Feb, likely 1 Mar, until 31 Mar',
		shift: null
	});
	const never = withCar({ expectedFrom: null, likelyFrom: null, until: null });
	expect(rowOf('load car', never)).toMatchObject({ other: 'not expected', shift: null });
});

test('without a record of the snow no dates are compared', () => {
	const none = { expectedFrom: null, likelyFrom: null, until: null };
	const unknown = {
		...BASE,
		snowKnown: false,
		loads: BASE.loads.map((load) => ({ ...load, ...none }))
	};
	const car = compare(unknown, unknown, METRIC).find(({ id }) => id === 'load car');
	expect(car).toMatchObject({
		asIs: 'no dates while the snow is not known',
		other: 'no dates while the snow is not known',
		shift: null
	});
});

test('a load tried out stands last, without an estimate as it is', () => {
	const [car] = BASE.loads.filter(({ id }) => id === 'car');
	if (!car) throw new Error('the invented winter has a car');
	const tried = { ...car, id: 'what-if', name: 'Car with 500 kg more' };
	const last = compare(BASE, { ...BASE, loads: [...BASE.loads, tried] }, METRIC).at(-1);
	expect(last).toMatchObject({
		name: 'Car with 500 kg more, asks 38 cm',
		asIs: 'not among your loads'
	});
});

test('a load for an engineer stays one', () => {
	expect(rowOf('load shelter', BASE)).toMatchObject({
		name: 'Truck with shelter, parked, ask an engineer',
		asIs: 'only an ice engineer can say',
		other: 'only an ice engineer can say',
		shift: null
	});
});

test('changes are said in words, in the units of the reader', () => {
	expect([0, 0.5, 1, 1.5, 2].map(snowWords)).toEqual([
		'cleared, and kept so',
		'50 % of it',
		'as it is',
		'1.5 times as much',
		'double'
	]);
	expect([-2, 0, 3].map((warming_K) => warmingWords(warming_K, METRIC))).toEqual([
		'2 °C colder',
		'as it is',
		'3 °C warmer'
	]);
	expect(warmingWords(3, IMPERIAL)).toBe('5 °F warmer');
	expect([addedWords(0, METRIC), addedWords(500, METRIC), addedWords(500, IMPERIAL)]).toEqual([
		'nothing more',
		'500 kg more',
		'1,102 lb more'
	]);
});

test('a heavier load keeps its row of the charts', () => {
	const car = {
		id: 'car',
		name: 'Car',
		mass_kg: 1800,
		use: 'car' as const,
		parked_h: 0,
		wetCracks: 0 as const,
		current: false,
		group: false,
		trailer: null,
		count: 1,
		spacing_m: null
	};
	expect(heavier(car, 500, METRIC)).toEqual({
		...car,
		id: 'what-if',
		name: 'Car with 500 kg more',
		mass_kg: 2300
	});
});

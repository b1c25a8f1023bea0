import { http, HttpResponse } from 'msw';
import { expect, test } from 'vitest';
import { fetchBoth } from '#lib/server/weather/source/contract.ts';
import {
	ask,
	hoursFrom,
	inventedNetwork,
	inventedSource,
	SETTINGS,
	wave_degC
} from '../../../support/weather-service.ts';

const network = inventedNetwork();

function answering(response: () => Response): { asked: number } {
	const count = { asked: 0 };
	network.use(
		http.get('https://weather.example/hours', () => {
			count.asked += 1;
			return response();
		})
	);
	return count;
}

const time = hoursFrom('2026-01-18T23:00Z', 96);
const whole = () =>
	HttpResponse.json({ time, air: time.map((_, at) => wave_degC(at)), rain: time.map(() => 0) });

const get = () => fetchBoth(inventedSource(), ask({ from: '2026-01-19' }), SETTINGS);

test('one call brings what has ended as history, and the rest as forecast', async () => {
	const count = answering(whole);
	const { history, forecast } = await get();
	expect(count.asked).toBe(1);
	expect(history).toMatchObject({ outcome: 'ok', calls: 1, faults: [] });
	expect(forecast).toMatchObject({ outcome: 'ok', calls: 0, faults: [] });
	const noon_s = Date.UTC(2026, 0, 20, 12) / 1000;
	expect(history.hours.at(-1)?.at_s).toBe(noon_s - 3600);
	expect(forecast.hours.at(0)?.at_s).toBe(noon_s);
	expect(history.hours.length + forecast.hours.length).toBe(96);
});

test('an answer without anything to come is a history, and fails as a forecast', async () => {
	const past = hoursFrom('2026-01-18T23:00Z', 30);
	answering(() =>
		HttpResponse.json({ time: past, air: past.map((_, at) => wave_degC(at)), rain: [] })
	);
	const { history, forecast } = await get();
	expect(history.outcome).toBe('ok');
	expect(forecast).toMatchObject({ outcome: 'failed', validators: null });
});

test('a call that fails is told of both, each with faults of its own', async () => {
	answering(() => new HttpResponse(null, { status: 500 }));
	const { history, forecast } = await get();
	expect(history.faults.map(({ code }) => code)).toEqual(['serverFailed']);
	expect(forecast.faults).toEqual(history.faults);
	expect(forecast.faults).not.toBe(history.faults);
});

import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import fc from 'fast-check';
import { fetchWeather, trySource } from '../../../src/lib/server/weather/source/contract.ts';
import { ask, hoursFrom, inventedSource, SETTINGS, wave_degC } from '../weather-service.ts';
import { kind } from './kind.ts';
import { mutatedJson } from './mutate-json.ts';
import { mutated } from './mutate-text.ts';

const time = hoursFrom('2026-01-18T00:00Z', 72);
const air = time.map((_, at) => wave_degC(at));
const rows = time.map((at, index) => ({ at, temperature_c: air[index], rain: 0 }));

const JSON_ANSWERS = [
	{ time, air, rain: time.map(() => 0.1), issued: '2026-01-20T06:00:00Z' },
	{
		utc_offset_seconds: 3600,
		hourly: { time, temperature_2m: air },
		hourly_units: { temperature_2m: '°C' }
	},
	{ features: rows.map((row) => ({ properties: { ...row, unitCode: 'degC' } })) },
	{
		list: rows.map(({ at, temperature_c }) => ({
			dt: Date.parse(`${at}Z`) / 1000,
			main: { temp: (temperature_c ?? 0) + 273.15 }
		}))
	},
	rows
];
const CSV_ANSWERS = [
	`time,air,rain\n${time.map((at, index) => `${at},${air[index]},0.1`).join('\n')}\n`,
	`date;tmin;tmax\n2026-01-18;-12,5;-3\n2026-01-19;-14;-5,5\n2026-01-20;-11;-2\n`
];

/** Headers that bear on what is understood. */
const headers = fc.record({
	'content-type': fc.constantFrom('application/json', 'text/csv', 'text/html', 'x', ''),
	'last-modified': fc.constantFrom(
		'Tue, 20 Jan 2026 06:00:00 GMT',
		'0',
		'tomorrow',
		'9'.repeat(300)
	),
	'retry-after': fc.constantFrom('0', '-1', '1e9', 'Tue, 20 Jan 2026 06:00:00 GMT', 'soon'),
	expires: fc.constantFrom('0', 'Tue, 20 Jan 2037 06:00:00 GMT', '-1'),
	'cache-control': fc.constantFrom(
		'max-age=60',
		'max-age=-1',
		'max-age=99999999999999999999',
		'no-store'
	),
	etag: fc.constantFrom('"a"', 'W/"a"', 'a', '')
});

const status = fc.oneof(
	{ weight: 9, arbitrary: fc.constant(200) },
	{ weight: 1, arbitrary: fc.constantFrom(201, 204, 206, 304, 401, 404, 429, 500, 503, 599) }
);

/** What services answer, over a real connection: read with a mapping, and with one that is guessed. */
export const sourceAnswers = kind({
	inputs: fc.record({
		text: fc.oneof(
			{ weight: 3, arbitrary: mutatedJson(JSON_ANSWERS) },
			{ weight: 1, arbitrary: mutated(fc.constantFrom(...CSV_ANSWERS)) }
		),
		headers,
		status,
		isTry: fc.boolean(),
		part: fc.constantFrom('history' as const, 'forecast' as const)
	}),
	async open() {
		let now = { text: '', headers: {} as Record<string, string>, status: 200 };
		const server = createServer((_, response) => {
			// Its clock is this machine's, and not the test's.
			response.sendDate = false;
			response.writeHead(now.status, now.headers);
			response.end(now.status === 204 || now.status === 304 ? undefined : now.text);
		});
		await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
		const { port } = server.address() as AddressInfo;
		const settings = { ...SETTINGS, allowedHosts: ['127.0.0.1'] };
		const address = `http://127.0.0.1:${port}/hours?from={from}&to={to}`;
		const source = inventedSource();
		const calls = source.calls.map((call) => ({ ...call, address }));
		return {
			async take({ isTry, part, ...answer }) {
				now = answer;
				const asked = ask({ part });
				const [call] = calls;
				if (!call) throw new Error('the invented source has no call');
				const { mapping: _, ...unmapped } = call;
				const came = isTry
					? await trySource({ ...unmapped, mapping: null }, asked, settings)
					: await fetchWeather({ ...source, calls }, asked, settings);
				const { hours, days } = 'answer' in came ? came.answer : came;
				return {
					status: isPossible(hours) && isPossible(days) ? 200 : 599,
					text: JSON.stringify({ hours, days })
				};
			},
			async close() {
				server.closeAllConnections();
				await new Promise((done) => server.close(done));
			}
		};
	}
});

/** No value that cannot be: too cold is too thick. */
function isPossible(times: readonly object[]): boolean {
	return times.every((each) => {
		const { air_degC } = each as { air_degC: number | null };
		return air_degC === null || (air_degC >= -75 && air_degC <= 60);
	});
}

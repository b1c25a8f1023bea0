import { createServer, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

/** How a weather service on this machine does: well, failing, or with a page in the place of weather. */
export type Mood = 'well' | 'failing' | 'page';

export interface LocalWeather {
	/** With the places where position and days go. */
	address: string;
	host: string;
	mood: Mood;
	/** How long ago the forecast that it tells was made. */
	issuedAgo_h: number;
	asked: number;
	close(): Promise<void>;
}

const S_PER_HOUR = 3600;

export interface ToldWeather {
	/** By hours since 1970. */
	air_degC: (hour: number) => number;
	/** The service's own clock. */
	now_ms: () => number;
}

/** Cold with a day's wave. */
const COLD: ToldWeather = {
	air_degC: (hour) => -9 + 3 * Math.cos((Math.PI * (hour - 14)) / 12) + 2 * Math.sin(hour / 31),
	now_ms: () => Date.now()
};

/** A real server that tells past hours and ten days to come in one answer. */
export async function localWeather(port = 0, told: ToldWeather = COLD): Promise<LocalWeather> {
	const state = { mood: 'well' as Mood, issuedAgo_h: 3, asked: 0 };
	const server = createServer(({ url = '/' }, response) => {
		// Its clock is this machine's, and not the test's.
		response.sendDate = false;
		state.asked += 1;
		if (state.mood === 'failing') return send(response, 503, 'text/plain', 'down for repair');
		if (state.mood === 'page')
			return send(response, 200, 'text/html', '<!doctype html><p>Hello</p>');
		const { searchParams } = new URL(url, 'http://localhost');
		const day_s = (name: string) => Date.parse(searchParams.get(name) ?? '') / 1000;
		const anew = { ...told, air_degC: reckonedAnew(told, state.asked) };
		const body = JSON.stringify(weather(day_s('from'), day_s('to'), state.issuedAgo_h, anew));
		send(response, 200, 'application/json', body);
	});
	await new Promise<void>((done) => server.listen(port, '127.0.0.1', done));
	const host = `127.0.0.1:${(server.address() as AddressInfo).port}`;
	const close = () =>
		new Promise<void>((done) => {
			server.close(() => done());
			server.closeAllConnections();
		});
	const address = `http://${host}/hours?lat={latitude}&lon={longitude}&from={from}&to={to}`;
	return Object.assign(state, { address, host, close });
}

/** No two forecasts are alike in all of their hours. */
function reckonedAnew({ air_degC, now_ms }: ToldWeather, asked: number): ToldWeather['air_degC'] {
	const now = now_ms() / 3_600_000;
	return (hour) => air_degC(hour) - (hour > now ? (asked % 7) / 20 : 0);
}

function send(response: ServerResponse, status: number, type: string, body: string): void {
	response.writeHead(status, { 'content-type': type });
	response.end(body);
}

function weather(
	from_s: number,
	to_s: number,
	issuedAgo_h: number,
	{ air_degC, now_ms }: ToldWeather
) {
	const count = Math.max(0, Math.round((to_s - from_s) / S_PER_HOUR) + 24);
	const hours = Array.from({ length: count }, (_, at) => from_s / S_PER_HOUR + at);
	const issued_ms = now_ms() - issuedAgo_h * 3_600_000;
	return {
		issued: `${new Date(issued_ms).toISOString().slice(0, 19)}Z`,
		station: { name: 'Invented Ridge', elevation: 640 },
		hourly: {
			time: hours.map((hour) => `${new Date(hour * 3_600_000).toISOString().slice(0, 16)}Z`),
			temperature: hours.map((hour) => Number(air_degC(hour).toFixed(1))),
			precipitation: hours.map((hour) => (hour % 40 < 3 ? 0.2 : 0))
		}
	};
}

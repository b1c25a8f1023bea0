import { addDays, winterOf } from '#lib/model/calendar.ts';
import { runningApp, type RunningApp } from '../keeping-up/running-app.ts';
import { dailyCsv, yearOfHoursCsv } from './files.ts';
import { tally, type Tally } from './tally.ts';

export interface LoadReport {
	duration_s: number;
	lakes: number;
	/** Each of them asks for a lake's page, reads for a while, and asks again. */
	phones: number;
	writers: number;
	importers: number;
	pages: Tally;
	readings: Tally;
	imports: Tally;
	/** Rows of hours that were imported. */
	importedRows: number;
	/** Readings that were answered and are not there, or are there twice, afterwards. */
	lost: number;
}

const LAKES = 10;
const PHONES = 50;
const WRITERS = 5;
/** Somebody looks at a page, and drills a hole. */
const LOOKING_MS = 2000;
const DRILLING_MS = 5000;

/** Phones that poll pages, people who log readings and one who imports, all at once. */
export async function loadReport(duration_ms: number): Promise<LoadReport> {
	const app = await runningApp();
	try {
		const ids = await prepare(app);
		const end_ms = performance.now() + duration_ms;
		const goesOn = () => performance.now() < end_ms;
		const [pages, readings, imports] = [tally(), tally(), tally()];
		const logged: string[] = [];
		let importedRows = 0;
		const lakeAt = (at: number) => ids[at % ids.length] ?? '';
		const look = async (phone: number) => {
			await pause((LOOKING_MS * phone) / PHONES);
			for (let turn = phone; goesOn(); turn += 7) {
				await pages.time(() => page(app, `/lakes/${lakeAt(turn)}`));
				await pause(LOOKING_MS);
			}
		};
		const log = async (writer: number) => {
			for (let turn = 0; goesOn(); turn++) {
				const remark = `writer ${writer}, ${turn}`;
				await readings.time(async () => {
					await app.api('POST', `/lakes/${lakeAt(writer + turn)}/readings`, readingOf(remark));
					logged.push(remark);
				});
				await pause(DRILLING_MS);
			}
		};
		const bring = async () => {
			for (let turn = 0; goesOn(); turn++) {
				const csv = yearOfHoursCsv(2000 + (turn % 20), turn);
				await imports.time(async () => {
					const path = `/lakes/${lakeAt(turn)}/weather`;
					importedRows += (await app.api<{ accepted: number }>('POST', path, csv)).accepted;
				});
			}
		};
		await Promise.all([
			...Array.from({ length: PHONES }, (_, phone) => look(phone)),
			...Array.from({ length: WRITERS }, (_, writer) => log(writer)),
			bring()
		]);
		return {
			duration_s: duration_ms / 1000,
			lakes: LAKES,
			phones: PHONES,
			writers: WRITERS,
			importers: 1,
			pages: pages.told(),
			readings: readings.told(),
			imports: imports.told(),
			importedRows,
			lost: await countLost(app, ids, logged)
		};
	} finally {
		await app.stop();
	}
}

/** Lakes that froze over two months ago, with daily weather of three winters. */
async function prepare(app: RunningApp): Promise<string[]> {
	const today = new Date().toISOString().slice(0, 10);
	const freezeUpOn = addDays(today, -60);
	const ids: string[] = [];
	for (let lake = 0; lake < LAKES; lake++) {
		const place = { latitude: 45 + lake, longitude: -38.2, timeZone: 'Etc/GMT+3' };
		const facts = { name: `Invented ${lake}`, water: 'lake', ...place };
		const { id } = await app.api<{ id: string }>('POST', '/lakes', facts);
		await app.api('PUT', `/lakes/${id}/winters/${winterOf(freezeUpOn)}`, { freezeUpOn });
		await app.api('POST', `/lakes/${id}/weather`, dailyCsv(addDays(today, -1095), today, lake));
		await page(app, `/lakes/${id}`);
		ids.push(id);
	}
	return ids;
}

function readingOf(remark: string) {
	const on = new Date().toISOString().slice(0, 10);
	const holes = [0.31, 0.33, 0.3].map((total_m) => ({ total_m, snow_m: 0.04 }));
	return { on, kind: 'measured', place: 'the bay', holes, remark };
}

async function page({ url }: RunningApp, path: string): Promise<void> {
	const response = await fetch(new URL(path, url));
	await response.text();
	if (!response.ok) throw new Error(`${path} answered ${response.status}`);
}

async function countLost(app: RunningApp, ids: string[], logged: string[]): Promise<number> {
	const found = new Map<string, number>();
	for (const id of ids) {
		const stored = await app.api<{ remark: string }[]>('GET', `/lakes/${id}/readings`);
		for (const { remark } of stored) found.set(remark, (found.get(remark) ?? 0) + 1);
	}
	return logged.filter((remark) => found.get(remark) !== 1).length;
}

function pause(duration_ms: number): Promise<void> {
	return new Promise((done) => setTimeout(done, duration_ms));
}

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { previewCsv } from '#lib/server/weather/csv/preview.ts';
import { HERE, readAll, toBytes } from './read-all.ts';

const CELLS = [
	'date',
	'time',
	'temp_c',
	'tmean_f',
	'precip_mm',
	'snowfall_cm',
	'hour',
	'year',
	'month',
	'day',
	'°C',
	'2024-01-01',
	'2024-01-02',
	'13.01.2024',
	'01/02/2024',
	'20240105',
	'1704067200',
	'45292',
	'24:00',
	'-5',
	'-5.5',
	'-5,5',
	'1.234,5',
	'-999',
	'NaN',
	'T',
	'',
	'"',
	'""',
	'"a',
	'\0',
	'\uFEFF',
	'9e999',
	'1e-5',
	'__proto__',
	'constructor',
	'\u2028'
];

const shaped = fc
	.tuple(
		fc.constantFrom(',', ';', '\t', '|', ' '),
		fc.constantFrom('\n', '\r\n', '\r'),
		fc.array(
			fc.array(fc.oneof({ weight: 9, arbitrary: fc.constantFrom(...CELLS) }, fc.string()), {
				maxLength: 6
			}),
			{
				maxLength: 12
			}
		)
	)
	.map(([delimiter, end, rows]) => rows.map((row) => row.join(delimiter)).join(end));

const bytes = fc.oneof(
	fc.string({ unit: 'binary', maxLength: 300 }).map(toBytes),
	fc.uint8Array({ maxLength: 300 }),
	shaped.map(toBytes),
	shaped.map((text) => new Uint8Array(Buffer.from(text, 'utf16le'))),
	shaped.map((text) => toBytes(`date,temp_c\n2024-01-01,-5\n${text}\n2024-01-02,-6\n`))
);

test('10,000 random texts are read or refused, never with an exception or a number that is none', async () => {
	await fc.assert(
		fc.asyncProperty(bytes, fc.integer({ min: 1, max: 400 }), async (content, pieceSize) => {
			const preview = previewCsv(content, HERE);
			const read = await readAll(content, HERE, pieceSize);
			expect(preview.ok || preview.problems.length > 0).toBe(true);
			expect(preview.ok).toBe(!read.isFatal);
			for (const problem of [...preview.problems, ...read.rejected]) {
				expect(Number.isInteger(problem.line) && problem.line >= 1).toBe(true);
				expect(problem.reason.length).toBeGreaterThan(10);
			}
			for (const row of [...read.days, ...read.hours]) {
				const values = Object.values(row).filter(
					(value) => value !== null && typeof value !== 'string'
				);
				expect(values.every((value) => Number.isFinite(value))).toBe(true);
			}
		}),
		{ numRuns: 10_000, seed: 20_240_113 }
	);
}, 300_000);

interface Dialect {
	delimiter: string;
	decimal: '.' | ',';
	end: string;
	date: (on: string) => string;
	temperature: { header: string; print: (air_degC: number) => number };
	water: { header: string; print: (mm: number) => number };
	missing: string;
	notes: number;
	isQuoted: boolean;
}

const part = (on: string) => on.split('-') as [string, string, string];

const DATES: readonly ((on: string) => string)[] = [
	(on) => on,
	(on) => `${on}T00:00:00`,
	(on) => part(on).toReversed().join('.'),
	(on) => part(on).toReversed().join('/'),
	(on) => [part(on)[1], part(on)[2], part(on)[0]].join('/'),
	(on) => part(on).join(''),
	(on) => String(Date.parse(`${on}T00:00Z`) / 1000),
	(on) => `${Number(part(on)[2])} ${MONTHS[Number(part(on)[1]) - 1]} ${part(on)[0]}`
];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

const dialect: fc.Arbitrary<Dialect> = fc
	.record({
		delimiter: fc.constantFrom(',', ';', '\t', '|'),
		decimal: fc.constantFrom<'.' | ','>('.', ','),
		end: fc.constantFrom('\n', '\r\n', '\r'),
		date: fc.constantFrom(...DATES),
		temperature: fc.constantFrom(
			{ header: 'temp_c', print: (air_degC: number) => air_degC },
			{ header: 'Mean Temp (°F)', print: (air_degC: number) => air_degC * 1.8 + 32 },
			{ header: 'Lufttemperatur [°C]', print: (air_degC: number) => air_degC },
			{ header: 'tavg (K)', print: (air_degC: number) => air_degC + 273.15 }
		),
		water: fc.constantFrom(
			{ header: 'precip_mm', print: (mm: number) => mm },
			{ header: 'Precipitation (in)', print: (mm: number) => mm / 25.4 },
			{ header: 'precip [cm]', print: (mm: number) => mm / 10 }
		),
		missing: fc.constantFrom('', 'NA', '-999', '-9999'),
		notes: fc.integer({ min: 0, max: 5 }),
		isQuoted: fc.boolean()
	})
	.map((drawn) => ({
		...drawn,
		isQuoted: drawn.isQuoted || (drawn.delimiter === ',' && drawn.decimal === ',')
	}));

interface Row {
	on: string;
	air_degC: number | null;
	precipitation_kg_m2: number | null;
}

const rows: fc.Arbitrary<Row[]> = fc
	.tuple(
		fc.integer({ min: 1200, max: 20_000 }),
		fc.array(
			fc.record({
				air_degC: fc.option(fc.double({ min: -40, max: 25, noNaN: true }), { freq: 9 }),
				precipitation_kg_m2: fc.option(fc.double({ min: 0, max: 60, noNaN: true }), { freq: 9 })
			}),
			{ minLength: 32, maxLength: 60 }
		)
	)
	.map(([start, values]) =>
		values.map((value, index) => ({
			on: new Date((start + index) * 86_400_000).toISOString().slice(0, 10),
			...value
		}))
	)
	.filter((drawn) => drawn.some(({ air_degC }) => air_degC !== null));

function print(written: readonly Row[], form: Dialect): string {
	const number = (value: number | null, toUnit: (value: number) => number) =>
		value === null ? form.missing : toUnit(value).toFixed(6).replace('.', form.decimal);
	const quote = (cell: string) => (form.isQuoted ? `"${cell}"` : cell);
	const notes = Array.from({ length: form.notes }, (_, index) => `made-up record, part ${index}`);
	const table = [
		['date', form.temperature.header, form.water.header],
		...written.map(({ on, air_degC, precipitation_kg_m2 }) => [
			form.date(on),
			number(air_degC, form.temperature.print),
			number(precipitation_kg_m2, form.water.print)
		])
	];
	const body = table.map((cells) => cells.map(quote).join(form.delimiter));
	return [...notes, ...body].join(form.end);
}

test('what is written in any dialect is read back as the same numbers', async () => {
	await fc.assert(
		fc.asyncProperty(rows, dialect, async (written, form) => {
			const { days, rejected, isFatal } = await readAll(print(written, form));
			expect(isFatal ? rejected.at(-1) : null).toBeNull();
			expect(rejected.every(({ reason }) => reason.endsWith('a gap'))).toBe(true);
			const known = written.filter(
				(row) => row.air_degC !== null || row.precipitation_kg_m2 !== null
			);
			expect(days.map(({ on }) => on)).toEqual(known.map(({ on }) => on));
			for (const [index, row] of known.entries()) {
				expectClose(days[index]?.air_degC, row.air_degC);
				expectClose(days[index]?.precipitation_kg_m2, row.precipitation_kg_m2);
			}
		}),
		{ numRuns: 1000, seed: 20_240_114 }
	);
}, 120_000);

/** Six decimals in any of the units. */
function expectClose(read: number | null | undefined, written: number | null): void {
	if (written === null) expect(read).toBeNull();
	else expect(Math.abs((read ?? NaN) - written)).toBeLessThan(2e-5);
}

const LOCAL = {
	year: 'numeric',
	month: '2-digit',
	day: '2-digit',
	hour: '2-digit',
	minute: '2-digit'
} as const;

/** @example localText(0, 'America/Chicago') // => '1969-12-31 18:00' */
function localText(at_s: number, timeZone: string): string {
	return new Intl.DateTimeFormat('sv-SE', { ...LOCAL, timeZone }).format(at_s * 1000);
}

function offsetText(at_s: number, offset_h: number): string {
	const wall = new Date((at_s + offset_h * 3600) * 1000).toISOString().slice(0, 16);
	const [hours = '', minutes = ''] = [
		Math.floor(Math.abs(offset_h)),
		(Math.abs(offset_h) % 1) * 60
	].map((value) => String(value).padStart(2, '0'));
	return `${wall}${offset_h < 0 ? '-' : '+'}${hours}:${minutes}`;
}

test('hours written in local time or with any offset are read back at the same instants', async () => {
	const zones = fc.constantFrom('America/Chicago', 'Europe/Helsinki', 'UTC', 'Asia/Tokyo');
	const offsets = fc.constantFrom(null, -8, -6, 0, 2, 5.5);
	const firstHours = fc.oneof(
		fc.integer({ min: 100_000, max: 480_000 }),
		// Around the changes of clocks in 2024.
		fc
			.constantFrom('2024-03-09', '2024-03-30', '2024-10-26', '2024-11-02')
			.map((on) => Date.parse(on) / 3.6e6)
	);
	const tenths = fc.array(fc.integer({ min: -400, max: 250 }), { minLength: 2, maxLength: 80 });
	await fc.assert(
		fc.asyncProperty(
			zones,
			offsets,
			firstHours,
			tenths,
			async (timeZone, offset_h, first, values) => {
				const at_s = values.map((_, index) => (first + index) * 3600);
				const stamps = at_s.map((at) =>
					offset_h === null ? localText(at, timeZone) : offsetText(at, offset_h)
				);
				// A record that starts in the second of two equal hours can't be told from one in the first.
				fc.pre(offset_h !== null || localText((first - 1) * 3600, timeZone) !== stamps[0]);
				const body = stamps.map((stamp, index) => `${stamp},${(values[index] ?? 0) / 10}`);
				const read = await readAll(['time,temp_c', ...body].join('\n'), { timeZone });
				expect(read.rejected).toEqual([]);
				expect(read.hours.map((hour) => hour.at_s)).toEqual(at_s);
				expect(read.hours.map(({ air_degC }) => air_degC)).toEqual(
					values.map((value) => value / 10)
				);
			}
		),
		{ numRuns: 500, seed: 20_240_115 }
	);
}, 120_000);

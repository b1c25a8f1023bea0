import { expect, test } from 'vitest';
import { previewCsv } from '#lib/server/weather/csv/preview.ts';
import { HERE, readAll, toBytes } from './read-all.ts';

/** In time of the processor, so that a busy machine is no fault. */
function spent_ms(work: () => unknown): number {
	const before = process.cpuUsage();
	work();
	const { user, system } = process.cpuUsage(before);
	return (user + system) / 1000;
}

test.each([
	['cells more in every row', `date,air\n${'1,2,3\n'.repeat(11_000)}`],
	['one cell in every row', `date,air\n${'1\n'.repeat(33_000)}`],
	['every delimiter at once', `date,air\n${'1,;\t|\n'.repeat(11_000)}`]
])('a head of %s does not hold up everybody else', (_, text) => {
	previewCsv(toBytes(text), HERE);
	expect(spent_ms(() => previewCsv(toBytes(text), HERE))).toBeLessThan(1000);
});

test('more rows than the head is looked at for are read all the same', async () => {
	const days = Array.from({ length: 7000 }, (_, at) =>
		new Date(Date.UTC(2001, 0, 1) + at * 86_400_000).toISOString().slice(0, 10)
	);
	const { days: read } = await readAll(`date,t_c\n${days.map((on) => `${on},-1\n`).join('')}`);
	expect(read.length).toBe(7000);
});

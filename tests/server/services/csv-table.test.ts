import fc from 'fast-check';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { readTable } from '#lib/server/services/csv-table.ts';
import { plainLine } from '#lib/server/services/plain-lines.ts';
import { readTidyTable } from '#lib/server/services/tidy/table.ts';
import { writeTable } from '#lib/server/services/tidy/write-table.ts';
import { hostile } from '../../support/hostile-texts.ts';

/** What spreadsheets begin a formula by. */
const SIGNS = ['=', '+', '-', '@', '\t', '\r'];

const row = z.object({ lake: z.string() });

/** As both readers of our own tables give a cell back. */
function readBack(text: string): { csv: string; cells: (string | undefined)[] } {
	const csv = writeTable(['lake', 'total_cm'], [[text, 3]]);
	const [first] = readTable(csv).rows;
	const [tidy] = readTidyTable(csv, row, ['lake']).rows;
	return { csv, cells: [first?.cells.get('lake'), tidy?.row.lake] };
}

function expectHarmless(text: string): void {
	const { csv, cells } = readBack(text);
	const cell = csv.split('\r\n').slice(1).join('\r\n');
	for (const sign of SIGNS) expect(cell.replace(/^"/, '').startsWith(sign)).toBe(false);
	expect(cells).toEqual([text, text]);
}

test.each(hostile)('%s is no formula in a table, and comes back as it was', (_, __, stored) => {
	expectHarmless(stored);
	for (const sign of ['=', '+', '-', '@', "'=", "''@"]) expectHarmless(`${sign}${stored}`);
});

test('whatever a name is, it is no formula in a table, and comes back as it was', () => {
	const names = fc
		.tuple(fc.constantFrom('', '=', '+', '-', '@', "'", "'=", '"', ';', ','), fc.string())
		.map((parts) => plainLine(parts.join('')))
		.filter((name) => name !== '');
	fc.assert(fc.property(names, expectHarmless), { numRuns: 500, seed: 20_270_111 });
});

import { parseArgs } from 'node:util';
import { asText } from './bench/report-text.ts';
import { benchReport, type Bench } from './bench/report.ts';

const { values } = parseArgs({
	options: { json: { type: 'boolean' }, quick: { type: 'boolean' } }
});

/** `--quick` is for seeing that it works; its figures are of too little to speak of. */
const bench: Bench = values.quick
	? {
			ensemble: { members: 100, days: 100, rounds: 1, sizes: sizes(50, 50) },
			lakes: 2,
			winters: 2,
			served: { lakes: 2, duration_ms: 300 }
		}
	: {
			ensemble: { members: 1000, days: 200, rounds: 8, sizes: sizes(500, 100) },
			lakes: 100,
			winters: 20,
			served: { lakes: 60, duration_ms: 5000 }
		};

const report = await benchReport(bench);
process.stdout.write(`${values.json ? JSON.stringify(report, null, 1) : asText(report)}\n`);

/** Twice and four times the members, and twice the days. */
function sizes(members: number, days: number): [members: number, days: number][] {
	return [
		[members, days],
		[2 * members, days],
		[2 * members, 2 * days],
		[4 * members, 2 * days]
	];
}

import { parseArgs } from 'node:util';
import { partsOf, type Bench } from './bench/parts.ts';
import { asText } from './bench/report-text.ts';
import { benchReport } from './bench/report.ts';

const { values } = parseArgs({
	options: {
		json: { type: 'boolean' },
		quick: { type: 'boolean' },
		only: { type: 'string' }
	}
});

/** `--quick` is for seeing that it works; its figures are of too little to speak of. */
const bench: Bench = values.quick
	? {
			ensemble: { members: 100, days: 100, rounds: 1, sizes: sizes(50, 50) },
			lakes: 2,
			winters: 2,
			served: { lakes: 2, duration_ms: 300 },
			visits: 1,
			costed: 2,
			load: { duration_ms: 3000, alone_ms: 3000 }
		}
	: {
			ensemble: { members: 1000, days: 200, rounds: 8, sizes: sizes(500, 100) },
			lakes: 100,
			winters: 20,
			served: { lakes: 60, duration_ms: 5000 },
			visits: 5,
			costed: 10,
			load: { duration_ms: 30_000, alone_ms: 120_000 }
		};

try {
	const report = await benchReport(bench, partsOf(values.only));
	process.stdout.write(`${values.json ? JSON.stringify(report, null, 1) : asText(report)}\n`);
} catch (cause) {
	if (!(cause instanceof RangeError)) throw cause;
	process.stderr.write(`${cause.message}\n`);
	process.exitCode = 1;
}

/** Twice and four times the members, and twice the days. */
function sizes(members: number, days: number): [members: number, days: number][] {
	return [
		[members, days],
		[2 * members, days],
		[2 * members, 2 * days],
		[4 * members, 2 * days]
	];
}

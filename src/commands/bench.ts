import { parseArgs } from 'node:util';
import type { BenchReport } from './bench/report.ts';
import { benchReport } from './bench/report.ts';

const { values } = parseArgs({ options: { json: { type: 'boolean' } } });
const report = benchReport();
process.stdout.write(`${values.json ? JSON.stringify(report, null, 1) : asText(report)}\n`);

function asText({ node, season, warnings }: BenchReport): string {
	const { c } = season;
	const lines = [
		`node ${node}, medians`,
		`a winter of ${season.days} days through the model: ${season.median_ms.toFixed(3)} ms`
	];
	if (c.median_ms !== null && c.ratio !== null)
		lines.push(
			`the same equations in C (cc -O3): ${c.median_ms.toFixed(3)} ms, ratio ${c.ratio.toFixed(1)}`
		);
	return [...lines, ...warnings.map((warning) => `WARNING: ${warning}`)].join('\n');
}

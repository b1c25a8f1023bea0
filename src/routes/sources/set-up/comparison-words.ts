import type { Comparison } from '#lib/server/services/sources/compare-stored.ts';
import { counted } from '#lib/ui/format/number.ts';

/** Differences of the means up to this are those of two places or two ways to measure. Our choice. */
const ALIKE_K = 2;

/** What a source told beside what is stored: what looks wrong, else that it agrees. */
export function comparisonWords(comparison: Comparison | null): string[] {
	if (comparison === null) {
		return [
			'Fewer than five of these days are stored from elsewhere, so there is nothing to compare with yet.'
		];
	}
	const { days, bias_K, spread_K, faults } = comparison;
	const over = `Over ${counted(days, 'day')} it reads ${step(bias_K)} than ${comparison.with}, give or take ${spread_K.toFixed(1)} °C.`;
	if (faults.length > 0) return [...faults.map(({ text }) => text), over];
	return Math.abs(bias_K) <= ALIKE_K ? [`${over} They agree.`] : [over];
}

function step(bias_K: number): string {
	return `${Math.abs(bias_K).toFixed(1)} °C ${bias_K < 0 ? 'colder' : 'warmer'}`;
}

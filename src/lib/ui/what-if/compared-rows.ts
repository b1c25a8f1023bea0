import type { StackRow } from '../components/StackTable.svelte';
import type { Comparison } from './compare.ts';

/** How it is, and how it would be, side by side. `missing` stands where the other is not estimated. */
export function comparedRows(rows: readonly Comparison[], missing: string): StackRow[] {
	return rows.map(({ id, name, asIs, other, shift }) => ({
		id,
		name,
		cells: [
			{ text: asIs },
			{ text: other ?? missing, strong: shift, isOther: other !== null && other !== asIs }
		]
	}));
}

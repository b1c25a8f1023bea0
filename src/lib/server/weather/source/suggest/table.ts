import type { JsonValue } from 'jsonpath-rfc9535';
import type { Step } from './json-path.ts';
import type { StatedUnit } from './units-in.ts';

/** Values that belong together: one for each time of the table. */
export interface Leaf {
	/** Names on the way, for what they say. */
	names: readonly Step[];
	path: string;
	values: readonly JsonValue[];
	/** Stated beside the values. */
	unit: StatedUnit | null;
	/** Where the values have times of their own. */
	timePath: string | null;
	/** Found there. */
	times?: readonly JsonValue[];
}

/** A part of an answer that may be weather by time. */
export interface Table {
	layout: 'columns' | 'rows' | 'csv';
	rows: string | null;
	leaves: Leaf[];
}

/** Values looked at of each leaf. */
export const SAMPLE = 200;

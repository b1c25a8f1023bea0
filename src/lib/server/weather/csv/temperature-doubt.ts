import type { CsvPlan } from './plan.ts';
import { inQuotes } from '../cells/quote.ts';
import type { RowProblem } from './problem.ts';
import { readNumber } from '../cells/numbers.ts';
import type { RowValues } from './row-values.ts';

/** Hotter than any lake with ice has seen for a mean, a lowest and a highest temperature. */
const TOO_HOT_degC = { air: 45, min: 40, max: 55 } as const;
const SNOW_TOO_WARM_degC = 8;
const YEAR_d = 300;

/** Watches a record for temperatures that can't be in the unit they are said to be in. */
export class TemperatureDoubt {
	readonly #plan: CsvPlan;
	readonly #first: CsvPlan['columns'][number] | undefined;
	#hot = 0;
	#snowy = 0;
	#snowyWarm = 0;
	#highest_degC = -Infinity;
	#from = Infinity;
	#to = -Infinity;

	constructor(plan: CsvPlan) {
		this.#plan = plan;
		const columns = plan.columns.filter(({ role }) => role in TOO_HOT_degC);
		this.#first = columns.find(({ role }) => role === 'air') ?? columns[0];
	}

	/** Counts the raw cells too: a value over the limits is rejected, but it is evidence. */
	noteCells(cells: readonly string[]): void {
		for (const { index, role, unit } of this.#plan.columns) {
			if (unit !== '°C' || (role !== 'air' && role !== 'min' && role !== 'max')) continue;
			const { value } = readNumber(cells[index] ?? '', this.#plan.decimal);
			if (
				value !== null &&
				value > TOO_HOT_degC[role] &&
				value < 135 &&
				value !== 99 &&
				value !== 99.9
			) {
				this.#hot += 1;
				break;
			}
		}
	}

	note({ air, min, max, snowfall }: RowValues, day: number): void {
		const mean = air ?? (min !== null && max !== null ? (min + max) / 2 : null);
		if (mean === null) return;
		this.#from = Math.min(this.#from, day);
		this.#to = Math.max(this.#to, day);
		this.#highest_degC = Math.max(this.#highest_degC, mean);
		if (snowfall === null || snowfall < 0.5) return;
		this.#snowy += 1;
		if (mean > SNOW_TOO_WARM_degC) this.#snowyWarm += 1;
	}

	/** Why the record can't be used, as far as it was read. */
	verdict(line: number): RowProblem | null {
		if (!this.#first) return null;
		const { header, unit } = this.#first;
		const says = `column ${inQuotes(header)} is taken as ${unit}, but`;
		if (this.#hot >= 3) {
			const remedy = 'choose °F for it, or correct the values if °C is right';
			return { line, reason: `${says} has values that can only be °F; ${remedy}` };
		}
		if (this.#snowyWarm >= 3 && this.#snowyWarm * 4 >= this.#snowy) {
			return {
				line,
				reason: `${says} snow falls on days warmer than ${SNOW_TOO_WARM_degC} °C by it, as if it were °F; choose °F for it, or leave the snowfall column out if ${unit} is right`
			};
		}
		return null;
	}

	/** What can only be said once all is read: °C taken for °F makes every day too cold. */
	finalVerdict(line: number): RowProblem | null {
		if (this.#first?.unit !== '°F') return null;
		if (this.#to - this.#from < YEAR_d || this.#highest_degC > 8) return null;
		return {
			line,
			reason: `column ${inQuotes(this.#first.header)} is taken as °F, but no day in a year is warmer than 8 °C by it, as if it were °C; choose °C for it`
		};
	}
}

import { isIsoDate, type IsoDate } from '#lib/model/calendar.ts';
import { fieldText, fieldUnits, toSi, type FieldUnit, type Quantity } from './quantity.ts';
import { readTypedNumber } from './typed-number.ts';

/** Every text field of a form as typed, by name. */
export type FormValues = Record<string, string>;

/** Something to mend, beside its field. With `keep` it is a question, and `keep` says yes to it. */
export interface Issue {
	field: string;
	message: string;
	keep?: string;
}

/** The answer to a form that can't be taken: all that was typed, and what to mend. */
export interface Refusal {
	values: FormValues;
	issues: Issue[];
}

interface SchemaProblem {
	path: readonly PropertyKey[];
	message: string;
}

/** As `safeParse` of a schema answers. */
type Checked<T> =
	{ success: true; data: T } | { success: false; error: { issues: readonly SchemaProblem[] } };

export interface Limits {
	/** In SI, both inclusive. */
	from?: number;
	to?: number;
	isRequired?: boolean;
	/** What is stored now: a field left as it was shown keeps it to the last digit. */
	stored?: number | null | undefined;
}

export function formValues(form: FormData): FormValues {
	const values: FormValues = {};
	for (const [name, value] of form) if (typeof value === 'string') values[name] = value;
	return values;
}

/** Reads the fields of one form and gathers what has to be mended. */
export class FormInput {
	readonly issues: Issue[] = [];
	readonly values: FormValues;

	constructor(values: FormValues) {
		this.values = values;
	}

	get refusal(): Refusal {
		return { values: this.values, issues: this.issues };
	}

	refuse(field: string, message: string): void {
		this.issues.push({ field, message });
	}

	/**
	 * What a schema made of the form, or `null` while anything has to be mended: all of it in one round.
	 * What the schema says of a field that is refused already, or of a row of a list that has one, is of
	 * nothing that anybody typed, and left out.
	 */
	take<T>(checked: Checked<T>): T | null {
		if (!checked.success) this.#refuseMore(checked.error.issues);
		return checked.success && this.issues.length === 0 ? checked.data : null;
	}

	/** Puts what a schema says of `holes.0.total_m` beside the field that it came from. */
	refuseAll(problems: readonly SchemaProblem[]): void {
		for (const { path, message } of problems) {
			const field = this.#fieldAt(path.join('.'));
			this.refuse(field, plainly(message));
		}
	}

	#refuseMore(problems: readonly SchemaProblem[]): void {
		const refused = this.issues.map(({ field }) => field);
		const isSaid = ({ path }: SchemaProblem): boolean =>
			refused.includes(this.#fieldAt(path.join('.'))) ||
			refused.some((field) => field.startsWith(`${String(path[0])}.`));
		this.refuseAll(problems.filter((problem) => !isSaid(problem)));
	}

	/** Asks once; the same value sent again with its box ticked is taken. */
	ask(field: string, message: string, keep: string): void {
		const kept = this.values[keepName(field)];
		if (kept !== undefined && kept === (this.values[field] ?? '')) return;
		this.issues.push({ field, message, keep });
	}

	text(field: string): string | null {
		return this.values[field]?.trim() || null;
	}

	required(field: string, remedy: string): string {
		const text = this.text(field);
		if (text === null) this.refuse(field, remedy);
		return text ?? '';
	}

	/** The name a quantity's field came under: `total_cm` or `total_in`. */
	fieldOf(stem: string, quantity: Quantity): string {
		return this.#unitOf(stem, quantity).field;
	}

	/** A quantity in SI, `null` when left empty or refused. */
	quantity(stem: string, quantity: Quantity, limits: Limits = {}): number | null {
		const { field, unit } = this.#unitOf(stem, quantity);
		const text = this.values[field] ?? '';
		if (limits.stored !== undefined && text === fieldText(limits.stored, unit)) {
			return limits.stored;
		}
		const typed = readTypedNumber(text);
		if (typed.problem !== null) this.refuse(field, typed.problem);
		if (typed.value === null) {
			if (typed.problem === null && limits.isRequired)
				this.refuse(field, `Type a number of ${unit.label}.`);
			return null;
		}
		const si = toSi(typed.value, unit);
		return this.#isWithin(field, si, unit, limits) ? si : null;
	}

	/** A day, `null` when left empty or refused. */
	day(field: string): IsoDate | null {
		const text = this.text(field);
		if (text === null || isIsoDate(text)) return text;
		this.refuse(field, `“${text}” is not a day. Type it like 2027-01-31.`);
		return null;
	}

	#fieldAt(path: string): string {
		if (this.values[path] !== undefined) return path;
		const stem = path.replace(/_[A-Za-z0-9]+$/, '');
		const starts = [`${stem}_`, `${path}.`];
		const isNear = (name: string) => starts.some((start) => name.startsWith(start));
		return Object.keys(this.values).find(isNear) ?? path;
	}

	#isWithin(field: string, si: number, unit: FieldUnit, { from, to }: Limits): boolean {
		const isLow = from !== undefined && si < from;
		const isHigh = to !== undefined && si > to;
		const bound = isLow ? from : to;
		if ((!isLow && !isHigh) || bound === undefined) return true;
		const edge = `${Number((bound / unit.inSi).toPrecision(4))} ${unit.label}`;
		this.refuse(field, isLow ? `Type ${edge} or more.` : `Type ${edge} or less.`);
		return false;
	}

	#unitOf(stem: string, quantity: Quantity): { field: string; unit: FieldUnit } {
		const [first, second] = fieldUnits(quantity);
		const unit = this.values[`${stem}_${second.suffix}`] === undefined ? first : second;
		return { field: `${stem}_${unit.suffix}`, unit };
	}
}

export function keepName(field: string): string {
	return `keep.${field}`;
}

/** An id for the element of a field. */
export function fieldId(form: string, field: string): string {
	return `${form}-${field.replaceAll('.', '-')}`;
}

/** A list of all that could have been sent helps programs, not people. */
function plainly(message: string): string {
	if (message.startsWith('Invalid option')) return 'Choose one of those that are offered.';
	return message.startsWith('must') ? `This ${message}.` : message;
}

import type { Context } from '#lib/server/context.ts';
import { columnChoices } from '#lib/server/services/column-choices.ts';
import {
	previewWeather,
	type ColumnGuess,
	type CsvPreview
} from '#lib/server/services/import-weather.ts';
import type { FormValues } from '#lib/ui/forms/form-input.ts';

const HEAD_BYTES = 65_536;

export interface Looked {
	name: string;
	preview: CsvPreview;
	/** What the form says otherwise than the guess. */
	corrections: ColumnGuess[];
}

/** The guess for a file, with the corrections that the form `role.0`, `unit.0`, ... brings along. */
export async function lookAt(
	context: Context,
	lakeId: string,
	file: File,
	values: FormValues
): Promise<Looked> {
	const head = new Uint8Array(await file.slice(0, HEAD_BYTES).arrayBuffer());
	const guess = await previewWeather(context, lakeId, head);
	const corrections = guess.columns.flatMap((column) => correction(column, values) ?? []);
	const preview =
		corrections.length > 0 ? await previewWeather(context, lakeId, head, corrections) : guess;
	return { name: file.name, preview, corrections };
}

/** `null` where the form leaves the guess as it is. A unit of another role is not taken along. */
function correction(guess: ColumnGuess, values: FormValues): ColumnGuess | null {
	const choice = columnChoices().find(({ role }) => role === values[`role.${guess.index}`]);
	if (!choice) return null;
	const typed = values[`unit.${guess.index}`] ?? '';
	const unit = choice.units.includes(typed) ? typed : null;
	const isSame = choice.role === guess.role && (unit === guess.unit || unit === null);
	return isSame ? null : { ...guess, role: choice.role, unit };
}

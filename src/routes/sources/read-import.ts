import { newSourceOrExport, type NewSource } from '#lib/server/services/sources/input.ts';
import { formValues, type Refusal } from '#lib/ui/forms/form-input.ts';

const LARGEST_BYTES = 200_000;
/** More would hide the first ones, which the others mostly follow from. */
const MOST_ISSUES = 6;

type Read = { source: NewSource; refusal: null } | { source: null; refusal: Refusal };

/** A source from a chosen file, else from the pasted text, which stays in its field when refused. */
export async function readImport(form: FormData): Promise<Read> {
	const file = form.get('file');
	const values = formValues(form);
	const isFile = file instanceof File && file.size > 0;
	if (isFile && file.size > LARGEST_BYTES)
		return refused(values, [`${file.name} has more than 200 kB. A source’s file has a few.`]);
	const text = isFile ? await file.text() : (values['text'] ?? '');
	const kept = { ...values, text };
	if (text.trim() === '') return refused(kept, ['Choose a file or paste the text of one.']);
	const body = parsed(text);
	if (body === undefined)
		return refused(kept, ['This is not JSON as a whole. Take the file as it was exported.']);
	const checked = newSourceOrExport.safeParse(body);
	if (checked.success) return { source: checked.data, refusal: null };
	const problems = checked.error.issues.map(({ path, message }) => {
		const where = path.filter((step) => step !== 'source').join('.');
		return where === '' ? `${message}.` : `${where}: ${message}.`;
	});
	return refused(kept, problems.slice(0, MOST_ISSUES));
}

function refused(values: Record<string, string>, messages: readonly string[]): Read {
	const issues = messages.map((message) => ({ field: 'text', message }));
	return { source: null, refusal: { values, issues } };
}

function parsed(text: string): unknown {
	try {
		return JSON.parse(text);
	} catch {
		return undefined;
	}
}

import { formValues, type FormValues } from '../forms/form-input.ts';

const START = 'frostledger-draft:';

/**
 * Keeps what is being typed into a form on this device from the first letter, and brings it back into a
 * form that is still as it was made.
 */
export function keepDraft(name: string) {
	return (form: HTMLFormElement) => {
		restore(form, read(name));
		const keep = () => write(name, formValues(new FormData(form)));
		form.addEventListener('input', keep);
		return () => form.removeEventListener('input', keep);
	};
}

export function dropDraft(name: string): void {
	attempt(() => localStorage.removeItem(START + name));
}

/** Of all forms. */
export function dropDrafts(): void {
	attempt(() => {
		for (const key of Object.keys(localStorage)) {
			if (key.startsWith(START)) localStorage.removeItem(key);
		}
	});
}

export function countDrafts(): number {
	return (
		attempt(() => Object.keys(localStorage).filter((key) => key.startsWith(START)).length) ?? 0
	);
}

function restore(form: HTMLFormElement, draft: FormValues): void {
	for (const [name, value] of Object.entries(draft)) {
		const field = form.elements.namedItem(name);
		if (field instanceof HTMLInputElement && ['text', 'date'].includes(field.type)) {
			if (field.value === field.defaultValue) field.value = value;
		} else if (field instanceof RadioNodeList) field.value = value;
	}
}

function read(name: string): FormValues {
	const text = attempt(() => localStorage.getItem(START + name));
	return text ? ((attempt(() => JSON.parse(text)) as FormValues | null) ?? {}) : {};
}

function write(name: string, values: FormValues): void {
	attempt(() => localStorage.setItem(START + name, JSON.stringify(values)));
}

/** Storage is refused in some private windows, and full in others: then there is no draft. */
function attempt<T>(work: () => T): T | null {
	try {
		return work();
	} catch {
		return null;
	}
}

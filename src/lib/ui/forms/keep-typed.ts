import type { SubmitFunction } from '@sveltejs/kit';

/**
 * For `use:enhance`: leaves the fields as they are. A reset would empty fields that show what is
 * stored; a form for adding is made anew by its page once the address says that it was stored. Where
 * the server fails or cannot be reached, that is said in the form, which keeps what was typed.
 */
export const keepTyped: SubmitFunction = ({ formElement }) => {
	formElement.querySelector(`.${MARK}`)?.remove();
	return async ({ result, update }) => {
		if (result.type === 'error') tellIn(formElement, result.error);
		else await update({ reset: false });
	};
};

const MARK = 'not-stored';

function tellIn(form: HTMLFormElement, error: unknown): void {
	const said = isTold(error) ? error.message : 'The server cannot be reached.';
	const line = document.createElement('p');
	line.className = MARK;
	line.role = 'alert';
	line.textContent = `Not stored; what you typed still stands here. ${said}`;
	// Beside the button that was pressed, where the eyes are.
	form.append(line);
	line.scrollIntoView({ block: 'nearest' });
}

/** What the server says of itself is no `Error`, unlike a lost connection. */
function isTold(error: unknown): error is App.Error {
	return !(error instanceof Error) && typeof error === 'object' && error !== null;
}

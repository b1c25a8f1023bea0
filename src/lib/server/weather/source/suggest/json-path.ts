/** A step down into JSON: a member's name, an element's index, or all elements. */
export type Step = string | number | '*';

/** A path of RFC 9535 from its steps. @example pathText(['hourly', 'time']) // => '$.hourly.time' */
export function pathText(steps: readonly Step[]): string {
	return `$${steps.map(segment).join('')}`;
}

function segment(step: Step): string {
	if (step === '*') return '[*]';
	if (typeof step === 'number') return `[${step}]`;
	if (/^[A-Za-z_][A-Za-z0-9_]*$/.test(step)) return `.${step}`;
	const escaped = step.replace(/[\\']/g, '\\$&').replace(/\p{Cc}/gu, hex);
	return `['${escaped}']`;
}

function hex(char: string): string {
	return `\\u${char.charCodeAt(0).toString(16).padStart(4, '0')}`;
}

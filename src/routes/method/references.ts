/** A source as it is cited in the code, with a title to be set apart. */
export interface Reference {
	key: string;
	before: string;
	title: string;
	after: string;
}

/** The list of sources in `references.md`: lines of `- [Key] text, _Title_, text`. */
export function referencesIn(markdown: string): Reference[] {
	return markdown.split('\n').flatMap((line) => {
		const [, key, text] = /^- \[(\w+)\] (.*)$/.exec(line) ?? [];
		if (key === undefined || text === undefined) return [];
		const [before = '', title = '', ...after] = text.split('_');
		return [{ key, before, title, after: after.join('_') }];
	});
}

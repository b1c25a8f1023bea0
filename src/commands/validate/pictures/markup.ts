/** Text that is ready to stand in a page; everything else is escaped on its way in. */
export class Markup {
	constructor(readonly text: string) {}
}

export type Content = string | number | Markup | null | readonly Content[];

export const NOTHING = new Markup('');

/** A piece of a page from a template: what is put in is escaped, other markup and lists of it are not. */
export function markup(parts: TemplateStringsArray, ...contents: readonly Content[]): Markup {
	return new Markup(String.raw({ raw: parts }, ...contents.map(written)));
}

function written(content: Content): string {
	if (content === null) return '';
	if (content instanceof Markup) return content.text;
	if (typeof content === 'string' || typeof content === 'number') return escaped(`${content}`);
	return content.map(written).join('');
}

const ENTITIES: Record<string, string> = {
	'&': '&amp;',
	'<': '&lt;',
	'>': '&gt;',
	'"': '&quot;',
	"'": '&#39;'
};

function escaped(text: string): string {
	return text.replace(/[&<>"']/g, (sign) => ENTITIES[sign] ?? sign);
}

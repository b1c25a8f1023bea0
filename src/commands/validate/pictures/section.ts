import { markup, NOTHING, type Content, type Markup } from './markup.ts';
import { numbersTable, type Table } from './table.ts';

/** One drawing of a section. */
export interface Panel {
	title: string;
	picture: Markup;
	/** What the picture says, in words. */
	says: string;
}

export interface Section {
	id: string;
	title: string;
	/** How to read the pictures. */
	reading: Content;
	key?: Markup;
	panels: readonly Panel[];
	table: Table;
}

/** A question with the pictures that answer it, their sentences and their numbers. */
export function section({ id, title, reading, key, panels, table }: Section): Markup {
	return markup`<section id="${id}" aria-labelledby="${id}-title">
<h2 id="${id}-title">${title}</h2>
<p>${reading}</p>
${key ?? NOTHING}
<div class="panels">${panels.map(panel)}</div>
${numbersTable(table)}
</section>
`;
}

function panel({ title, picture, says }: Panel): Markup {
	return markup`<figure>
<h3>${title}</h3>
${picture}
<figcaption>${says}</figcaption>
</figure>
`;
}

import { markup, type Markup } from './markup.ts';

export interface Table {
	caption: string;
	/** What several columns have in common, and how many they are, after the first. */
	over?: readonly (readonly [name: string, columns: number])[];
	head: readonly string[];
	/** The first cell names its row. */
	rows: readonly (readonly string[])[];
}

/** Numbers behind a picture, closed until they are asked for. */
export function numbersTable(table: Table): Markup {
	return markup`<details>
<summary>The same in numbers</summary>
${openTable(table)}
</details>`;
}

/** A table that scrolls by itself, by keyboard too, where the screen is narrower. */
export function openTable({ caption, over, head, rows }: Table): Markup {
	return markup`<div class="scroll" role="region" aria-label="${caption}" tabindex="0"><table>
<caption>${caption}</caption>
<thead>${over ? overRow(over) : null}<tr>${head.map((name) => markup`<th scope="col">${name}</th>`)}</tr></thead>
<tbody>${rows.map(row)}</tbody>
</table></div>`;
}

function overRow(over: NonNullable<Table['over']>): Markup {
	return markup`<tr><td></td>${over.map(
		([name, columns]) => markup`<th scope="colgroup" colspan="${columns}">${name}</th>`
	)}</tr>`;
}

function row([name = '', ...cells]: readonly string[]): Markup {
	return markup`<tr><th scope="row">${name}</th>${cells.map((cell) => markup`<td>${cell}</td>`)}</tr>
`;
}

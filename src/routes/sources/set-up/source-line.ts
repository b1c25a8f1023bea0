/** Changes of a source come one after the other under this. */
export function sourceLine(id: string): string {
	return `source ${id}`;
}

/** Something asked for by an id that nothing has. The screen says 404. */
export class NotFound extends Error {
	override name = 'NotFound';
	readonly kind:
		| 'lake'
		| 'site'
		| 'reading'
		| 'load'
		| 'source'
		| 'backup'
		| 'weak spot'
		| 'route'
		| 'feed'
		| 'webhook'
		| 'link'
		| 'winter'
		| 'deletion';
	readonly id: string;

	constructor(kind: NotFound['kind'], id: string, where = '') {
		super(`No ${kind} "${id}"${where}`);
		this.kind = kind;
		this.id = id;
	}
}

/** A database that cannot be used as asked; the message is a sentence with what to do. */
export class StorageRefusal extends Error {
	override name = 'StorageRefusal';
}

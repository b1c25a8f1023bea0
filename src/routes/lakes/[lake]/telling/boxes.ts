/** Names of the boxes: one for each load, one for each kind of message. */
export const LOAD_BOX = 'load:';
export const KIND_BOX = 'kind:';

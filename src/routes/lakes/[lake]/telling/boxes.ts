/** Names of the boxes: one for each site, one for each load, one for each kind of message. */
export const SITE_BOX = 'site:';
export const LOAD_BOX = 'load:';
export const KIND_BOX = 'kind:';

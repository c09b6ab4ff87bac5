// How long a connection is waited for, and how much of a header is read: whoever sends slowly holds nothing up.
/** In milliseconds and bytes. A photograph of 20 MB over the shop's own network takes some seconds; a header takes one packet. */
export const PATIENCE = {
  headersTimeout: 10_000,
  requestTimeout: 60_000,
  keepAliveTimeout: 5_000,
  connectionsCheckingInterval: 2_000,
  maxHeaderSize: 16 * 1024,
};

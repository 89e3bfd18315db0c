/**
 * Every message up to the last of a stream. A reader is served by one server, and one that was killed may come back some messages short and
 * still say that it is current (nats-server 2.9.10 did): a reader that ends early is followed by another, behind what it gave.
 */
export async function* upTo<M extends { readonly seq: number }>(
  last: number,
  first: number,
  readerFrom: (seq: number) => Promise<AsyncIterable<M>>,
  readers = 100,
): AsyncGenerator<M> {
  let next = first
  for (let left = readers; next <= last; left--) {
    if (left === 0) throw new Error(`message ${next} of ${last} is on no server that was asked in ${readers} times`)
    for await (const message of await readerFrom(next)) {
      yield message
      next = message.seq + 1
      if (next > last) return
    }
  }
}

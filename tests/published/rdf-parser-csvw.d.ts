declare module 'rdf-parser-csvw' {
  import type { Readable } from 'node:stream';

  interface Node {
    readonly termType: string;
    readonly value: string;
    readonly datatype?: Node;
    equals(other: Node): boolean;
  }

  interface Quad {
    readonly subject: Node;
    readonly predicate: Node;
    readonly object: Node;
  }

  interface Dataset {
    match(subject?: Node | null, predicate?: Node | null): Dataset & Iterable<Quad>;
  }

  export default class Parser {
    constructor(options: { readonly metadata: Dataset; readonly baseIRI: string });
    import(input: Readable): AsyncIterable<Quad>;
  }
}

declare module '@rdfjs/data-model' {
  interface Node {
    readonly termType: string;
    readonly value: string;
    equals(other: Node): boolean;
  }

  interface Quad {
    readonly subject: Node;
    readonly predicate: Node;
    readonly object: Node;
  }

  const factory: {
    blankNode(): Node;
    namedNode(iri: string): Node;
    literal(text: string): Node;
    quad(subject: Node, predicate: Node, object: Node): Quad;
  };
  export default factory;
}

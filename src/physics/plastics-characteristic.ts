/** Special characteristics that may follow any polymer symbol. */
const general: Readonly<Record<string, string>> = {
  A: 'amorphous',
  B: 'block copolymer',
  C: 'chlorinated or crystalline',
  E: 'expanded',
  G: 'glycol-modified',
  H: 'homopolymer',
  HI: 'high impact',
  I: 'impact',
  P: 'plasticised',
  R: 'random copolymer',
  U: 'unplasticised',
  X: 'crosslinked',
};

const byPolymer: Readonly<Record<string, readonly string[]>> = {
  PE: ['HD', 'LD', 'LLD', 'MD', 'VLD', 'HMW', 'UHMW'],
  TPA: ['EE', 'ES', 'ET'],
  TPC: ['EE', 'ES', 'ET'],
  TPS: ['SBS', 'SEBS', 'SEPS', 'SIS'],
  TPU: ['ARES', 'ARET', 'AREE', 'ARCE', 'ARCL', 'ALES', 'ALET'],
};

/**
 * True if the text after a hyphen is a special characteristic of the polymer, such as `HI` after `PS`, and no filler:
 * `PE-MD` is polyethylene of medium density, `PP-MD` polypropylene with mineral powder.
 * Source: ISO 1043-1:2011, clause 6; ISO 18064 for thermoplastic elastomers (from memory).
 */
export function isCharacteristic(polymer: string, text: string): boolean {
  const own = Object.hasOwn(byPolymer, polymer) ? byPolymer[polymer] : undefined;
  return Object.hasOwn(general, text) || (own?.includes(text) ?? false);
}

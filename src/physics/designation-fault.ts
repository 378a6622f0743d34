/** Why a text is no plastics designation, and what to write. */
export interface DesignationFault {
  readonly kind:
    | 'empty'
    | 'spaces'
    | 'lowerCase'
    | 'characters'
    | 'polymerSymbol'
    | 'ambiguousPolymer'
    | 'tradeWriting'
    | 'fillerSymbol'
    | 'fillerMixture'
    | 'massFraction';
  readonly message: string;
  /** Whole designations that may be meant; empty if there is no telling. */
  readonly suggestions: readonly string[];
}

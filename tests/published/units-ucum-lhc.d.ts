declare module '@lhncbc/ucum-lhc' {
  interface Conversion {
    readonly status: 'succeeded' | 'failed' | 'error';
    readonly toVal: number | null;
  }
  interface Utils {
    validateUnitString(code: string): {
      readonly status: 'valid' | 'invalid' | 'error';
      readonly ucumCode: string | null;
    };
    convertUnitTo(from: string, value: number, to: string): Conversion;
  }
  const library: { readonly UcumLhcUtils: { getInstance(): Utils } };
  export default library;
}

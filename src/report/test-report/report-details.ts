/** What a test report states that no profile holds. What is left out is named in the report as missing. */
export interface ReportDetails {
  /** Name and address of the laboratory or workshop. */
  readonly laboratory?: string;
  /** Where the work was done. */
  readonly place?: string;
  readonly customer?: string;
  /** State in which the item came. */
  readonly itemCondition?: string;
  /** Day on which the item was received. */
  readonly received?: string;
  readonly sampling?: string;
  /** Additions to the method, deviations from it, exclusions. */
  readonly deviations?: string;
  readonly authorisedBy?: string;
  /** What comes from external providers. */
  readonly external?: string;
}

/** Points of a report that only a person can fill in, with their names and the options that fill them. */
export const askedDetails: Readonly<
  Record<keyof ReportDetails, { readonly name: string; readonly option: string }>
> = {
  laboratory: { name: 'name and address of the laboratory', option: '--laboratory' },
  place: { name: 'place of the work', option: '--place' },
  customer: { name: 'customer', option: '--customer' },
  itemCondition: { name: 'condition of the item', option: '--item-condition' },
  received: { name: 'date of receipt', option: '--received' },
  sampling: { name: 'sampling', option: '--sampling' },
  deviations: { name: 'additions, deviations, exclusions', option: '--deviations' },
  authorisedBy: { name: 'who authorises the report', option: '--authorised-by' },
  external: { name: 'results of external providers', option: '--external' },
};

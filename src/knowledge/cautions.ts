/** What stands below every table: numbers for a supervised trial, and the usual dangers. */
export const tableCautions: readonly string[] = [
  'These numbers are starting points for a supervised trial, never a licence to exceed a limit of the maker.',
  'Hot ends burn, dryers can ignite, belts and motors catch hair and fingers, hot plastics give off fumes, unattended machines cause fires: follow the manual of the machine, the local codes and the advice of qualified people.',
];

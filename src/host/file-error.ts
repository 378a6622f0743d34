/** Why the system would not read or write a file, for a message: its code, such as EACCES. Other errors are bugs. */
export function fileErrorCode(error: unknown): string {
  if (error instanceof Error && 'code' in error) return String(error.code);
  throw error;
}

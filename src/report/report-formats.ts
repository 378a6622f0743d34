/** The forms of the report of a check: text, Markdown and pages for people, JSON for programs, the rest for code hosts. */
export const reportFormats = [
  'text',
  'json',
  'sarif',
  'junit',
  'annotations',
  'codeQuality',
  'markdown',
  'html',
] as const;

export type ReportFormat = (typeof reportFormats)[number];

/** The forms of a comparison: those that people read, JSON for programs, annotations for code hosts. */
export const diffFormats = ['text', 'json', 'markdown', 'annotations'] as const;

export type DiffFormat = (typeof diffFormats)[number];

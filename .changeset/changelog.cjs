// Read by `changeset version`, which wants CommonJS. The groups of STYLE are made afterwards by scripts/group-changelog.ts,
// since a line of a release knows nothing of the other lines.
const oneLine = (summary) => summary.trim().replace(/\s*\n\s*/g, ' ');

module.exports = {
  getReleaseLine: async ({ summary }) => `- ${oneLine(summary)}`,
  getDependencyReleaseLine: async () => '',
};

// Loaded before a program: writes at its end what it took, to where nobody else writes.
process.on('exit', () => {
  const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
  require('node:fs').writeSync(3, JSON.stringify([(userCPUTime + systemCPUTime) / 1e6, maxRSS / 1024]));
});

// What the core exports, and what reads it from folders.
export * from './core.ts';
export { loadRegistry } from './host/load-registry.ts';
export type { RegistryProblem } from './host/registry-folders.ts';
export { readSchemaFiles } from './host/schema-files.ts';

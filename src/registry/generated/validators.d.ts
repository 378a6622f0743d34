import type { Kind } from '../kind.ts';
import type { ShapeValidator } from '../form/shape-validator.ts';

export const validators: Readonly<Record<Kind, ShapeValidator>>;
export const schemaDigest: string;

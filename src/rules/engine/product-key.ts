import type { Profile } from '../../registry/profile.ts';

export type Product = Profile<'machine'> | Profile<'filament'>;

/** Letters and digits of a name in small letters, so that spelling variants are one. */
export function foldedName(name: string): string {
  return name.toLowerCase().replaceAll(/[^\p{L}\p{N}]/gu, '');
}

/** What makes a product one and the same: kind, maker, name, and the diameter of a filament, which is sold in several. */
export function productKey({ kind, data }: Product): string {
  const diameter = kind === 'filament' ? data.diameter : '';
  return [kind, foldedName(data.maker), foldedName(data.name), diameter].join('|');
}

export function isProduct(profile: { readonly kind: string }): profile is Product {
  return profile.kind === 'machine' || profile.kind === 'filament';
}

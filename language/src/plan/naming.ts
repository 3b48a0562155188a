/** Which names may stand where: those a file declares and those of the catalogue, by the role of the place. */
import { materialNames, type Role } from '../materials/catalogue.ts';
import type { NameRole, Plan } from './plan.ts';

/** Tables of the catalogue whose names may stand in a role; pigments are found by code. */
const TABLE: Partial<Record<NameRole, Role>> = {
  liquid: 'medium',
  medium: 'medium',
  agent: 'agent',
  binder: 'binder',
  resin: 'resin',
  ground: 'ground',
  support: 'support',
};

/** Names of materials that may stand in a role. */
export function cataloguedFor(role: NameRole): readonly string[] {
  const table = TABLE[role];
  return table ? materialNames(table) : [];
}

/** Names a plan declares that are offered in a role, the likelier first. */
export function declaredFor(plan: Plan, role: NameRole): readonly string[] {
  const { paints, mixes, mediums, pigments } = plan.visible;
  switch (role) {
    case 'area':
      return plan.implicitArea ? [] : [...plan.areas, ...plan.groups].map((a) => a.name);
    case 'layer':
      return plan.layers.map((l) => l.name);
    case 'paint':
      return [...paints.keys(), ...mixes.keys()];
    case 'pigment':
      return [...pigments.keys()];
    case 'liquid':
    case 'medium':
    case 'agent':
      return [...mediums.keys()];
    default:
      return [];
  }
}

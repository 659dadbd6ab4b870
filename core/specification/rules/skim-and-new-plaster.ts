import { holdFor } from '../holds.ts'
import { commonPractice, type GroupRule } from '../rule.ts'
import {
  findingsOf,
  hasFinding,
  number,
  orderBecause,
  primer,
  primerExtent,
  stepAt,
  uncured,
} from '../step-requests.ts'
import { layers } from './filling.ts'

const unwantedTexture: GroupRule = {
  id: 'unwanted-texture',
  level: 'group',
  phase: 'found',
  theme: 'plaster',
  title: 'Texture to be made smooth',
  found: 'Sand finish, stipple or sprayed texture that the client wants gone.',
  reason:
    'A texture is skimmed over in two thin coats, sanded and primed: one coat shows the texture through.',
  source: commonPractice,
  safety: 'asbestos',
  on: true,
  numbers: layers(2),
  when: (view) => hasFinding(view, 'unwantedTexture'),
  consequence: (view) => {
    const texture = findingsOf(view, 'unwantedTexture')
    const count = view.book.number('unwanted-texture', 'layers')
    const skims = Array.from({ length: count }, (_, index) =>
      stepAt(texture, 'skim', { ordinal: `${index + 1}`, productClass: 'dryingFiller' }),
    )
    return {
      steps: [...skims, stepAt(texture, 'sandFill')],
      primers: [primer('porous', primerExtent(view, texture), texture)],
    }
  },
  order: [
    orderBecause(
      ['skim/1'],
      ['skim/2', 'skim/3'],
      'Each skim dries before the next: wet under dry, it cracks.',
    ),
    orderBecause(['skim/2'], ['skim/3'], 'Each skim dries before the next: wet under dry, it cracks.'),
    orderBecause(['skim'], ['sandFill'], 'A skim is sanded flat once it is dry.'),
    orderBecause(['fill'], ['skim'], 'Deep places are filled before the thin skim goes over them.'),
    orderBecause(
      ['sandFill'],
      ['spotPrime', 'prime'],
      'The skim is primed after sanding: bare compound drinks the paint.',
    ),
  ],
}

const newPlaster: GroupRule = {
  id: 'new-plaster',
  level: 'group',
  phase: 'found',
  theme: 'plaster',
  title: 'New plaster',
  found: 'Plaster not yet painted, dark where it is damp.',
  reason:
    'New plaster is damp and alkaline: it cures first and takes a sealer that resists alkali, or the paint burns and peels.',
  source: "about a month before paint: painter's note; sealer: common practice",
  safety: 'moisture',
  on: true,
  numbers: {
    cureDays: number(28, 'days', 'Least age before it is painted', "painter's note: up to about a month"),
  },
  when: (view) => hasFinding(view, 'newPlaster'),
  consequence: (view) => {
    const plaster = findingsOf(view, 'newPlaster')
    const days = view.book.number('new-plaster', 'cureDays')
    return {
      primers: [primer('newPlaster', primerExtent(view, plaster), plaster)],
      holds: uncured(plaster).map((finding) =>
        holdFor(
          'newPlaster',
          finding,
          days,
          `New plaster in ${view.room.name}: let it cure (about ${days} days, until it is light and dry all over) before it is sealed, and mark it cured.`,
          "painter's note; common practice",
        ),
      ),
    }
  },
  order: [],
}

const bareCompound: GroupRule = {
  id: 'bare-compound',
  level: 'group',
  phase: 'found',
  theme: 'plaster',
  title: 'New skim coat or bare joint compound',
  found: 'White, chalky-smooth compound that has had no primer.',
  reason:
    'Bare compound drinks paint unevenly and flashes: it is sanded, dusted and sealed before any color.',
  source: commonPractice,
  safety: 'dust',
  on: true,
  numbers: {},
  when: (view) => hasFinding(view, 'newSkimCoat', 'bareJointCompound'),
  consequence: (view) => {
    const compound = findingsOf(view, 'newSkimCoat', 'bareJointCompound')
    return {
      steps: [stepAt(compound, 'sandFill')],
      primers: [primer('porous', primerExtent(view, compound), compound)],
    }
  },
  order: [
    orderBecause(
      ['sandFill'],
      ['spotPrime', 'prime'],
      'Compound is sanded before it is sealed: sanding cuts through the primer.',
    ),
  ],
}

export const newSurfaceRules = [unwantedTexture, newPlaster, bareCompound] as const

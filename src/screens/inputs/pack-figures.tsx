// What follows from a product's pack: how a layer lies on its pallet, drawn to scale, what a pallet can carry beside what the
// plan says it carries, and what a full trailer or container holds. Include it below the fields of the pack, with nothing
// more than the item: <PackFigures item={item} />; it draws nothing while the pack isn't known.
// Worked example: cases of 400 x 300 mm on 1200 x 1000: 10 a layer, drawn as 3 x 2 beside 4 turned.
import type { VNode } from 'preact';
import { palletOf } from '../../domain/pack/layer.ts';
import { type LoadFigures, loadsOf } from '../../domain/pack/load.ts';
import { LOADS } from '../../domain/pack/loads.ts';
import { type Pack, palletSides } from '../../domain/pack/pallets.ts';
import { loadSentence, packWarnings, palletSentence } from '../../domain/pack/words.ts';
import type { Item } from '../../domain/plan/index.ts';
import { Caution, Figure, ProblemNote } from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';
import { LayerDrawing } from './layer-drawing.tsx';
import './pack.css';

export function PackFigures({ item }: { item: Item }): VNode | null {
  const say = useSay();
  const { pack } = item;
  if (pack === null) return null;
  const pallet = palletOf(pack);
  const told = { item, pack, pallet, say };
  const warnings = packWarnings(told);
  return (
    <section class="ff-pack" aria-label="What fits">
      {warnings.length > 0 && (
        <ProblemNote>
          {warnings.map((warning) => (
            <p key={warning}>{warning}</p>
          ))}
        </ProblemNote>
      )}
      <div class="ff-pack-pallet">
        {pallet.layer !== null && pallet.layerCases > 0 && (
          <LayerDrawing
            floor={palletSides(pack.pallet)}
            boxes={pallet.layer.boxes}
            words={layerWords(pack, say)}
          />
        )}
        <div>
          <Figure
            size="row"
            label="A pallet can carry"
            value={say.count(pallet.cases)}
            unit={pallet.cases === 1 ? 'case' : 'cases'}
            note={palletSentence(told)}
          />
          <p class="ff-least ff-quiet">
            {bestWords(pallet.layerCases, pallet.layerAtMost, say)} Reckoned with below: the{' '}
            {say.count(item.palletCases)} {item.palletCases === 1 ? 'case' : 'cases'} that the plan says.
          </p>
        </div>
      </div>
      <div class="ff-pack-loads">
        {loadsOf(item, pack).map((each) => (
          <LoadFigure key={each.load} figures={each} say={say} />
        ))}
      </div>
      <Caution>
        The carrier’s and the retailer’s own rules decide. Confirm weights: axle loads and local law may allow
        less.
      </Caution>
    </section>
  );
}

function LoadFigure({ figures, say }: { figures: LoadFigures; say: ScreenSay }): VNode {
  const { load, pallets, units } = figures;
  const holds = pallets === 1 ? '1 pallet' : `${say.count(pallets)} pallets`;
  return (
    <Figure
      size="row"
      label={`${LOADS[load].words}: ${holds}`}
      value={say.count(units)}
      unit="units"
      note={`${loadSentence(figures, say)}${pallets === 0 ? '' : ` ${say.count(figures.kg)} kg.`}`}
    />
  );
}

/** "One layer: cases of 400 × 300 mm on 1,200 × 1,000 mm" */
function layerWords(pack: Pack, say: ScreenSay): string {
  const { length, width } = palletSides(pack.pallet);
  const sizes = [pack.caseLengthMm, pack.caseWidthMm, length, width].map(say.count);
  return `One layer: cases of ${sizes[0]} × ${sizes[1]} mm on ${sizes[2]} × ${sizes[3]} mm`;
}

function bestWords(found: number, most: number, say: ScreenSay): string {
  if (found === 0) return '';
  return found === most ? 'No layer holds more.' : `No layer holds more than ${say.count(most)}.`;
}

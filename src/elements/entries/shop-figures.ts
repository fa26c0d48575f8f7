import { offerShopFigures } from '../figures/onDemand.ts';
import { shopFigures } from '../figures/shopFigures.ts';

offerShopFigures(shopFigures);

import { ShopExperiencePage } from '../experience/shopExperience.ts';

customElements.define('shop-experience', ShopExperiencePage);

import { BookSearch } from '../search/bookSearch.ts';

customElements.define('book-search', BookSearch);

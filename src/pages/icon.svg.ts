/** The book's mark: a spark gap between two ruled lines. */
const icon = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 64 64"><rect width="64" height="64" rx="10" fill="#f6f1e4"/><path d="M14 18H50M14 46H50" stroke="#24211c" stroke-width="5" stroke-linecap="round"/><path d="M35 22 26 34h10l-7 9" fill="none" stroke="#0b5c6b" stroke-width="5" stroke-linecap="round" stroke-linejoin="round"/></svg>`;

export function GET(): Response {
  return new Response(icon, { headers: { 'content-type': 'image/svg+xml' } });
}

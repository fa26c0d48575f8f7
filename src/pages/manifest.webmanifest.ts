/** Lets a phone keep the book on its home screen. */
export function GET(): Response {
  const manifest = {
    name: 'Ignition Bench Book',
    short_name: 'Bench Book',
    start_url: './',
    scope: './',
    display: 'standalone',
    background_color: '#fbf8f1',
    theme_color: '#fbf8f1',
    icons: [{ src: 'icon.svg', sizes: 'any', type: 'image/svg+xml' }],
  };
  return new Response(JSON.stringify(manifest), { headers: { 'content-type': 'application/manifest+json' } });
}

/** Is this the edition that is opened from a folder? Its pages say so; the same pages on a server stay that edition. */
export function isPortable(): boolean {
  return document.documentElement.dataset['edition'] === 'portable';
}

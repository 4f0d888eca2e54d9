export function JobMenu() {
  return null;
}

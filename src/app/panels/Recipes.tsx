export function Recipes() {
  return <h2>Recipes</h2>;
}

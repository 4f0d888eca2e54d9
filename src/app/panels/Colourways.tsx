export function Colourways() {
  return <h2>Colourways</h2>;
}

// Shipped texts are imported as strings: `import text from './soils.paving'`. The bundler and the test runner both read them so.
declare module '*.paving' {
  const text: string;
  export default text;
}
declare module '*.md' {
  const text: string;
  export default text;
}

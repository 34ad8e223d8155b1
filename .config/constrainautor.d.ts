/** What is used of a library whose own types are its source, which does not stand up to this project's strictness. */
export default class Constrainautor {
  constructor(triangulation: {
    coords: ArrayLike<number>;
    triangles: Uint32Array;
    halfedges: Int32Array;
    hull: Uint32Array;
  });
  /** Makes an edge between two points, by their numbers; throws when it meets a point or another made edge. */
  constrainOne(from: number, to: number): number;
}

/**
 * A rigid form to lie on, as far as one step sees it. Ground of src/wrap is one; a test brings a cylinder or a sphere of its own.
 */
export interface Form {
  /**
   * Osculating surfaces under all points x y z …: `plane` gets unit normal n and offset c, so that n · x − c is the height; `foot` the nearest
   * points; `bend` six numbers a point, xx yx yy zx zy zz, how the normal turns as the point goes along (1/mm, positive on a dome).
   * `near` is the form's own, one number a point, to begin with −1.
   */
  planesInto(plane: Float64Array, foot: Float64Array, near: Int32Array, x: Float64Array, bend: Float64Array): void;
}

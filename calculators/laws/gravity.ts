/** Standard acceleration of free fall [m/s²], exact by definition (CGPM 1901). */
export const gravity = 9.80665;

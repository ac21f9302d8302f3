// Package scene is a drawing as plain data: lines, boxes, discs and texts in a plane, and its two ways out,
// SVG and PNG. Whoever draws measures its texts here first, with the font that the PNG is drawn in and
// that the SVG asks for, so that boxes fit on any machine. The same scene gives the same bytes.
//
// One unit is a CSS pixel, 1/96 inch, at the size the drawing is meant to be read at. X grows to the
// right and Y downwards.
package scene

// Package chassis knows what a rolling cart bears: how many modules stand on a shelf, what each caster
// carries, where the centre of mass is, at what slope the cart tips, and how hard it is to push.
//
// The cart is a rigid body on a level or evenly sloping floor. It stands in the middle between its
// wheels: track is the distance of the wheels' lines across, wheelbase along. Bodies have a height
// above the floor and an offset sideways from the middle; along the cart all are taken to be in the
// middle. Swivel casters trail, which shortens the base a little; that is left out: state the track and
// wheelbase of the casters turned inward.
//
// Masses are in kilograms, lengths in metres, angles in degrees, forces in newtons.
package chassis

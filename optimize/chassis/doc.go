// Package chassis knows what a rolling cart bears: how many modules stand on a shelf, what each caster
// carries, where the centre of mass is, at what slope the cart tips, and how hard it is to push.
//
// The cart is a rigid body on a level or evenly sloping floor, centred between its wheels: track is the distance
// between wheels across the cart, wheelbase along it. Bodies have a height above the floor and an offset sideways from
// the middle; lengthways all are taken to be in the middle. The trail of swivel casters shortens the base a little and
// is left out: state track and wheelbase with the casters turned inward.
//
// Masses are in kilograms, lengths in metres, angles in degrees, forces in newtons.
package chassis

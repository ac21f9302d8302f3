// Package energy turns what a cart has to run into what its battery bus has to give: watts over the
// day, the energy of the worst stretch of some length, the amperes of the strings, of the inverters
// and of the charger. It also says which batteries and inverters belong on a bus at all.
//
// The load record is cyclic: its first step follows its last. Within a step the watts are constant. An inverter has
// one efficiency at all loads, and one idle draw, which it also has under load. Direct-current loads are on the bus
// itself.
//
// Left out: the fall of a battery's capacity with cold, age and current (use the usable fraction),
// losses in the cables (the wiring room limits those), and the efficiency curve of an inverter at part load. A load's
// power factor counts in what the inverter must be able to supply, not in the energy.
//
// Energy is in watt-hours, time in hours, power in watts, current in amperes, money in whole cents.
// Nothing here reads files, and the same input gives the same numbers to the last bit.
package energy

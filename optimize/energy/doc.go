// Package energy turns what a cart has to run into what its battery bus has to give: watts over the
// day, the energy of the worst stretch of some length, the amperes of the strings, of the inverters
// and of the charger. It also says which batteries and inverters belong on a bus at all.
//
// The load record is cyclic: after its last step the first follows. Between steps nothing is assumed;
// within a step the watts are constant. An inverter has one efficiency at all loads and one idle draw,
// which it also has under load. Direct-current loads hang on the bus itself.
//
// Left out: the fall of a battery's capacity with cold, age and current (use the usable fraction),
// losses in the cables (the wiring room limits those), reactive power (state a load's watts as what
// the inverter must supply), and the efficiency curve of an inverter at part load.
//
// Energy is in watt-hours, time in hours, power in watts, current in amperes, money in whole cents.
// Nothing here reads files, and the same input gives the same numbers to the last bit.
package energy

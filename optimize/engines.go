package optimize

import "cartwright/optimize/milp"

// Engines lists the engines that solve programs here, a line each.
func Engines() []string { return milp.Engines() }

// CheckEngine returns an error where the environment asks for an engine that is not available.
func CheckEngine() error { return milp.Choose() }

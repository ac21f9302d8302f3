package branch

import "cartwright/optimize/milp/proof"

// node is a part of the program that is still to be looked at: its parent's, with one bound more.
type node struct {
	parent        *node
	column        int // -1 at the root
	lo, hi        float64
	bound         float64     // no point in it costs less
	tree          *proof.Tree // its place in the certificate
	depth, number int
	// How far the parent's relaxation moves to get here, and what it cost: for what is learnt of the column.
	distance, from float64
	up             bool
}

// split is a node that was split, with what its own relaxation proves.
type split struct {
	tree  *proof.Tree
	duals []proof.Multiplier
	value float64
}

// queue holds the open nodes, the least bound first.
type queue []*node

func (q queue) Len() int { return len(q) }
func (q queue) Less(i, j int) bool {
	if q[i].bound != q[j].bound {
		return q[i].bound < q[j].bound
	}
	return q[i].number > q[j].number
}
func (q queue) Swap(i, j int) { q[i], q[j] = q[j], q[i] }
func (q *queue) Push(n any)   { *q = append(*q, n.(*node)) }
func (q *queue) Pop() any {
	last := len(*q) - 1
	n := (*q)[last]
	*q = (*q)[:last]
	return n
}

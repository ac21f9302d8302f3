package optimize_test

import (
	"testing"

	"cartwright/optimize/question"
)

// What is sold brings more than all but the batteries costs: then less lifetime energy is better.
func TestRankingByLifeWithCredits(t *testing.T) {
	const seed = 5000199 // the eighth plan was once worse than the ninth
	checkRanking(t, randomProblem(seed), question.ByLife)
}

package page

import (
	"io"
	"net/http"
	"net/url"
	"strings"
	"testing"
)

// sideBySide fetches purchases side by side.
func sideBySide(t *testing.T, address string, buy ...string) string {
	t.Helper()
	answer, err := http.Get(address + "compare?" + url.Values{"buy": buy}.Encode())
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	text, err := io.ReadAll(answer.Body)
	if err != nil || answer.StatusCode != http.StatusOK {
		t.Fatalf("status %d, %v", answer.StatusCode, err)
	}
	return string(text)
}

func TestPurchasesSideBySide(t *testing.T) {
	address := up(t, newFake(t), demoFiles())
	if got := sideBySide(t, address, "2 slab", "", "1 block"); strings.Count(got, `scope="col"`) != 3 || !strings.Contains(got, "2 slab") || !strings.Contains(got, "1 block") {
		t.Errorf("two purchases: %s", got)
	}
	if got := sideBySide(t, address, " "); strings.TrimSpace(got) != "" {
		t.Errorf("no purchase: %s", got)
	}
	// What is wrong with one is told as text, whatever it holds.
	if got := sideBySide(t, address, "nothing"); !strings.Contains(got, "&lt;b&gt;nothing") || strings.Contains(got, "<b>") {
		t.Errorf("a wrong one: %s", got)
	}
	if got := sideBySide(t, address, "1 a", "1 b", "1 c", "1 d", "1 e", "1 <i>"); strings.Count(got, `scope="col"`) != 1+maxChoices || strings.Contains(got, "<i>") {
		t.Errorf("six purchases: %s", got)
	}
}

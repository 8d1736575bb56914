// Error carried forward: a slip costs its own line, and the lines below are judged on the figures that stand
// above.

#include <doctest/doctest.h>

#include <array>

#include "tests/support/bench_hands.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"

namespace halfdrop {
namespace {

using test::finding;
using test::with_text;

/// The sheet of run 1 and 2 with readings 1.00 -> 21.00 and 2.00 -> 22.05, ticked, and the working as it
/// follows.
const Attempt& rightly_worked() {
  static const Attempt attempt = [] {
    test::BenchHands hands;
    hands.whole_attempt();
    Attempt sheet = hands.hand_in();
    const std::array<std::array<const char*, 2>, 11> cells = {{{"1/initial", "1.00"},
                                                               {"1/final", "21.00"},
                                                               {"1/titre", "20.00"},
                                                               {"2/initial", "2.00"},
                                                               {"2/final", "22.05"},
                                                               {"2/titre", "20.05"},
                                                               {"calculation/mean titre", "20.03"},
                                                               {"calculation/moles of alkali", "2.003e-3"},
                                                               {"calculation/moles of acid", "2.003e-3"},
                                                               {"calculation/diluted vinegar", "0.0801"},
                                                               {"calculation/spirit vinegar", "0.801"}}};
    for (const auto& [cell, text] : cells) sheet = with_text(sheet, cell, text);
    return sheet;
  }();
  return attempt;
}

double arithmetic(const MarkedAttempt& marked) { return test::points(marked, Score::arithmetic); }

/// The criteria of arithmetic that are not met.
std::string unmet(const MarkedAttempt& marked) {
  std::string names;
  for (const Finding& finding : marked.findings) {
    if (finding.score == Score::arithmetic && !finding.met) names += finding.criterion + ";";
  }
  return names;
}

TEST_CASE("the working that follows from the readings is right, line by line") {
  const MarkedAttempt marked = mark(rightly_worked());
  CHECK(unmet(marked) == "");
  CHECK_NEAR(arithmetic(marked), marked.marks.parts[3].of, 0.0);
}

TEST_CASE("a wrong subtraction costs one point, and nothing below when the working follows it") {
  Attempt attempt = with_text(rightly_worked(), "1/titre", "21.00");
  const MarkedAttempt right = mark(rightly_worked());
  attempt = with_text(attempt, "calculation/mean titre", "20.53");  // (21.00 + 20.05) / 2 = 20.525
  attempt = with_text(attempt, "calculation/moles of alkali", "2.053e-3");
  attempt = with_text(attempt, "calculation/moles of acid", "2.053e-3");
  attempt = with_text(attempt, "calculation/diluted vinegar", "0.0821");
  attempt = with_text(attempt, "calculation/spirit vinegar", "0.821");
  const MarkedAttempt marked = mark(attempt);
  CHECK(unmet(marked) == "titres-subtracted;");
  CHECK_NEAR(test::points_lost(marked), test::points_lost(right) + 1.0, 1e-12);
}

TEST_CASE("a slip in one line of the working costs that line alone") {
  Attempt attempt =
      with_text(rightly_worked(), "calculation/diluted vinegar", "0.801");  // ten times too much
  CHECK(unmet(mark(attempt)) == "calculation/diluted vinegar;calculation/spirit vinegar;");
  attempt = with_text(attempt, "calculation/spirit vinegar", "8.01");
  CHECK(unmet(mark(attempt)) == "calculation/diluted vinegar;");
}

TEST_CASE("a line left out costs its point, and the next may follow from the line above it") {
  const MarkedAttempt marked = mark(with_text(rightly_worked(), "calculation/moles of acid", ""));
  CHECK(unmet(marked) == "calculation/moles of acid;");
}

TEST_CASE("ratio or dilution forgotten is seen") {
  CHECK(unmet(mark(with_text(rightly_worked(), "calculation/spirit vinegar", "0.0801"))) ==
        "calculation/spirit vinegar;");
  CHECK(unmet(mark(with_text(rightly_worked(), "calculation/moles of alkali", "2.003")))
            .starts_with("calculation/moles of alkali;"));
}

TEST_CASE("a mean may be rounded in its last place, not be another mean") {
  for (const char* text : {"20.02", "20.03", "20.025"}) {
    CAPTURE(text);
    CHECK(finding(mark(with_text(rightly_worked(), "calculation/mean titre", text)), "mean-titre").met);
  }
  for (const char* text : {"20.05", "20.00", "20.16", "200", "20", ""}) {
    CAPTURE(text);
    CHECK(!finding(mark(with_text(rightly_worked(), "calculation/mean titre", text)), "mean-titre").met);
  }
}

TEST_CASE("the mean is of the titres that are ticked, the trial included if it is") {
  Attempt attempt = rightly_worked();
  for (Change& change : attempt.changes) {
    auto* writing = std::get_if<Writing>(&change.what);
    if (writing && writing->cell == "2/counts") writing->cell = "trial/counts";
  }
  attempt = with_text(attempt, "trial/titre", "20.40");
  CHECK(finding(mark(with_text(attempt, "calculation/mean titre", "20.20")), "mean-titre").met);
}

TEST_CASE("figures carried in the calculator and figures rounded on paper are both right") {
  // Mean 20.025: 0.0020025 mol, 0.0801 mol/dm3. Rounded at each line to three figures: 2.00e-3, 0.0800,
  // 0.800.
  Attempt attempt = with_text(rightly_worked(), "calculation/moles of alkali", "2.00e-3");
  attempt = with_text(attempt, "calculation/moles of acid", "2.00e-3");
  CHECK(unmet(mark(attempt)) == "");
  attempt = with_text(attempt, "calculation/diluted vinegar", "0.0800");
  attempt = with_text(attempt, "calculation/spirit vinegar", "0.800");
  CHECK(unmet(mark(attempt)) == "");
}

TEST_CASE("too few or too many significant figures cost their own point only") {
  CHECK(unmet(mark(with_text(rightly_worked(), "calculation/spirit vinegar", "0.80"))) ==
        "significant-figures;");
  CHECK(unmet(mark(with_text(rightly_worked(), "calculation/spirit vinegar", "0.80100"))) ==
        "significant-figures;");
  CHECK(unmet(mark(with_text(rightly_worked(), "calculation/spirit vinegar", "0.8010"))) == "");
}

TEST_CASE("the mean wants the figures its line asks for") {
  for (const char* text : {"20.0", "20.1", "20"}) {
    CAPTURE(text);
    const MarkedAttempt marked = mark(with_text(rightly_worked(), "calculation/mean titre", text));
    CHECK(!finding(marked, "significant-figures").met);
    CHECK(finding(marked, "significant-figures").seen.find("wanted at least 4") != std::string::npos);
  }
}

TEST_CASE("a mean of nought with a power is no rounding") {
  for (const char* text : {"0.0e5", "0.0e400", "0e300"}) {
    CAPTURE(text);
    CHECK(!finding(mark(with_text(rightly_worked(), "calculation/mean titre", text)), "mean-titre").met);
  }
}

TEST_CASE("sums are shown in the student's own figures") {
  const MarkedAttempt marked = mark(with_text(rightly_worked(), "1/final", "21.005"));
  CHECK(finding(marked, "titres-subtracted").seen == "Run 1: 21.005 − 1.00 = 20.005, “20.00” was written.");
}

TEST_CASE("a titre wants two decimals") {
  CHECK(unmet(mark(with_text(rightly_worked(), "1/titre", "20.0"))) == "titres-subtracted;");
}

TEST_CASE("a result of nought is right for nothing") {
  Attempt attempt = rightly_worked();
  for (const char* cell : {"calculation/moles of alkali", "calculation/moles of acid",
                           "calculation/diluted vinegar", "calculation/spirit vinegar"}) {
    attempt = with_text(attempt, cell, "0.00");
  }
  CHECK(!finding(mark(attempt), "calculation/moles of alkali").met);
}

}  // namespace
}  // namespace halfdrop

// Whatever hands and pencil do, recorded minus ideal is the sum of the causes; and what is put right on paper
// afterwards changes none of them. Seeds, so that a failure can be looked at.

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <cstdio>

#include "game/session/view.h"
#include "physics/random.h"
#include "tests/support/bench_hands.h"
#include "tests/support/marked.h"
#include "tests/support/near.h"
#include "tests/support/noise.h"
#include "tests/support/rounds.h"

namespace halfdrop {
namespace {

using test::below;

constexpr double kExact_cm3 = 1e-9;
constexpr std::array<const char*, 6> kReadings = {"trial/initial", "trial/final", "1/initial",
                                                  "1/final",       "2/initial",   "2/final"};

std::string figure_text(double figure_cm3) {
  char text[32];
  std::snprintf(text, sizeof text, "%.2f", figure_cm3);
  return text;
}

/// Every other one with every fault that a burette can have.
Level bench_for(std::uint64_t seed) {
  const Level good = test::spirit_vinegar();
  if (seed % 2 == 0) return good;
  return with_values(good, R"({"burette":{"grease":1},"tap":{"leak_cm3_min":0.5,"stiff_degrees":3,)"
                           R"("loose_degrees":4,"grease_in_bore":0.2},"pipette":{"by_hand":false}})")
      .value();
}

/// A pair of hands that does anything at all; or all but emptying the flask, so that it runs over in the end.
class AnyHands {
 public:
  AnyHands(std::uint64_t seed, bool never_empties)
      : never_empties_(never_empties),
        random_(Random::stream(seed, 1, Purpose::unknown)),
        session_(bench_for(seed), seed, "") {}

  Attempt play(int moves) {
    begin();
    for (int i = 0; i < moves; ++i) {
      const std::size_t what = below(random_, 10);
      if (what < 4) {
        move();
      } else if (what < 7) {
        // Most are refused where they stand: that is part of the test.
        const Deed deed = any_deed();
        const bool empties = deed == Deed::empty_flask || deed == Deed::rinse_flask;
        if (!never_empties_ || !empties) static_cast<void>(session_.act(deed));
      } else {
        static_cast<void>(session_.write({kReadings.at(below(random_, kReadings.size())), any_text()}));
      }
      const std::size_t ticks = below(random_, 300);
      for (std::size_t tick = 0; tick < ticks; ++tick) session_.tick();
    }
    session_.end("handed in");
    return session_.attempt();
  }

 private:
  /// A filled burette and an aliquot, so that not everything that follows is idle.
  void begin() {
    HandsChange change;
    change.tap = 0.0;
    change.pour = 1.0;
    static_cast<void>(session_.set_hands(change));
    for (int tick = 0; tick < 15 * kTicksPerSecond; ++tick) session_.tick();
    change.pour = 0.0;
    static_cast<void>(session_.set_hands(change));
    for (const Deed deed : {Deed::fill_pipette, Deed::deliver_aliquot, Deed::add_indicator}) {
      static_cast<void>(session_.act(deed));
    }
  }

  /// However many deeds there are, a drop is touched off often enough to be on the wall at some reading.
  Deed any_deed() {
    constexpr std::size_t kTouchesOffOneIn = 8;
    if (below(random_, kTouchesOffOneIn) == 0) return Deed::touch_off_drop;
    return static_cast<Deed>(below(random_, kDeeds));
  }

  void move() {
    HandsChange change;
    switch (below(random_, 6)) {
      case 0:
        change.tap = random_.uniform() < 0.3 ? 0.0 : random_.uniform();
        break;
      case 1:
        change.eye_mm = random_.uniform(-600.0, 100.0);
        break;
      case 2:
        change.flask_x_cm = random_.uniform() < 0.6 ? random_.uniform(-2.0, 2.0) : 26.0;
        break;
      case 3:
        change.swirl = random_.uniform();
        break;
      case 4:
        change.wash = !never_empties_ && random_.uniform() < 0.5 ? 0.0 : random_.uniform();
        break;
      default:
        change.pour = random_.uniform() < 0.5 ? 0.0 : random_.uniform();
        break;
    }
    static_cast<void>(session_.set_hands(change));
  }

  std::string any_text() {
    const ReadingSeen seen = reading_seen(session_.spec(), session_.state());
    switch (below(random_, 7)) {
      case 0:
        return "";
      case 1:
        return "q";
      case 2:
        return figure_text(random_.uniform(-60.0, 120.0));
      case 3:
        return figure_text(std::round(seen.edge_cm3 * 20.0) / 20.0);
      case 4:
        return figure_text(seen.bottom_cm3);
      default:
        return figure_text(std::round(seen.bottom_cm3 * 20.0) / 20.0);
    }
  }

  bool never_empties_;
  Random random_;
  Session session_;
};

TEST_CASE("the causes add up whatever was done, refused, written, struck out and written again") {
  int titres = 0;
  std::array<int, kCauses> reached{};
  const auto plays = static_cast<std::uint64_t>(test::rounds(80, 10000));
  const int moves = plays > 1000 ? 60 : 120;
  const std::uint64_t every = plays > 1000 ? 40 : 8;
  for (std::uint64_t seed = 1; seed <= plays; ++seed) {
    CAPTURE(seed);
    const bool patient = seed % every == 0;  // only then is there something in the flask to swirl out
    const MarkedAttempt marked = mark(AnyHands(seed, patient).play(patient ? 400 : moves));
    CHECK(marked.outcome.reproduced);
    for (const TitreRow& row : marked.titres) {
      CAPTURE(row.run);
      if (!row.breakdown) continue;
      ++titres;
      double sum_cm3 = 0.0;
      for (std::size_t i = 0; i < kCauses; ++i) {
        const double cause_cm3 = row.breakdown->causes_cm3.at(i);
        CHECK(std::isfinite(cause_cm3));
        sum_cm3 += cause_cm3;
        if (std::fabs(cause_cm3) > 1e-4) ++reached.at(i);
      }
      CHECK_NEAR(*row.recorded_cm3 - marked.ideal_titre_cm3, sum_cm3, kExact_cm3);
      CHECK_NEAR(row.breakdown->remainder_cm3, 0.0, kExact_cm3);
    }
    for (const Finding& finding : marked.findings) {
      CAPTURE(finding.criterion);
      CHECK(std::isfinite(finding.points));
      CHECK(finding.seen.find("nan") == std::string::npos);
    }
  }
  CHECK(titres > static_cast<int>(plays) / 2);
  for (std::size_t i = 0; i < kCauses && !test::kSanitized; ++i) {  // the hands did reach what is tested
    const auto cause = static_cast<Cause>(i);
    CAPTURE(std::string(cause_id(cause)));
    if (cause != Cause::titrant_strength) CHECK(reached.at(i) > 0);  // this level's label is true
  }
}

/// What stands in a reading's cell when all is over.
std::string stands_in(const MarkedAttempt& marked, const std::string& cell) {
  const TitreRow& row = test::titre(marked, cell.substr(0, cell.find('/')));
  return figure_text(cell.ends_with("initial") ? *row.initial_cm3 : *row.final_cm3);
}

/// Strikes out, scrawls over or mistypes a reading some time after it was written, and puts it right in the
/// end.
Attempt corrected(Attempt attempt, const MarkedAttempt& was, Random& random) {
  const std::string cell = kReadings.at(below(random, kReadings.size()));
  const std::string right = stands_in(was, cell);
  const std::array<std::string, 4> wrong = {"", "q",
                                            figure_text(std::stod(right) + random.uniform(-0.3, 0.3)),
                                            stands_in(was, kReadings.at(below(random, kReadings.size())))};
  attempt = test::rewritten(std::move(attempt), cell, wrong.at(below(random, 4)), random.uniform(0.0, 400.0));
  return test::rewritten(std::move(attempt), cell, right, 1e6);
}

// Film runs down the wall between one look and the next: its causes move by that much.
constexpr double kRunsDown_cm3 = 0.003;

TEST_CASE("a faultless attempt keeps its causes however often its readings are scrawled over and put right") {
  test::BenchHands hands;
  hands.whole_attempt();
  const Attempt attempt = hands.hand_in();
  const MarkedAttempt was = mark(attempt);
  const auto times = static_cast<std::uint64_t>(test::rounds(30, 300));
  for (std::uint64_t seed = 1; seed <= times; ++seed) {
    CAPTURE(seed);
    Random random = Random::stream(seed, 2, Purpose::unknown);
    Attempt scrawled = attempt;
    for (std::size_t i = 0; i <= seed % 3; ++i) scrawled = corrected(std::move(scrawled), was, random);
    const MarkedAttempt is = mark(scrawled);
    for (const char* run : {"trial", "1", "2"}) {
      CAPTURE(run);
      REQUIRE(test::titre(is, run).breakdown);
      for (std::size_t i = 0; i < kCauses; ++i) {
        CAPTURE(std::string(cause_id(static_cast<Cause>(i))));
        CHECK_NEAR(test::titre(is, run).breakdown->causes_cm3.at(i),
                   test::titre(was, run).breakdown->causes_cm3.at(i), kRunsDown_cm3);
      }
    }
  }
}

}  // namespace
}  // namespace halfdrop

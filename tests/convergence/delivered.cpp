// What a few pairs of hands let out of a burette, cm3, one line each: built twice, with the bench's tick and
// with half of it, and compared by half_tick.py.

#include <cstdio>
#include <functional>
#include <vector>

#include "tests/physics/bench/at_the_bench.h"

namespace halfdrop {
namespace {

using namespace test;

/// A hand's tap by time, s.
using TapAt = std::function<double(double)>;

struct Play {
  const char* name;
  BenchSpec spec;
  bool jet_full;
  double lasts_s;
  TapAt tap;
};

double delivered_cm3(const Play& play) {
  BenchState state = lay_out(play.spec);
  fill_column(play.spec, state, 0.0);
  if (play.jet_full) fill_jet(play.spec, state);
  state.plug = 0.0;
  state.beaker_under = true;
  while (seconds(state.tick) < play.lasts_s) {
    Hands hands = tap_at(play.tap(seconds(state.tick)));
    hands.flask_x_cm = 26.0;
    step(play.spec, state, hands);
  }
  return state.ledger.entered(Account::pendant_drop).volume_cm3() +
         state.ledger.entered(Account::plug_drop).volume_cm3();
}

BenchSpec poor_bench() {
  BenchSpec spec = titration_bench();
  spec.burette.grease = 1.0;
  spec.tap.leak_cm3_min = 0.5;
  spec.tap.stiff_degrees = 2.0;
  settle(spec);
  return spec;
}

/// Turned back and forth twice a second.
double restless(double time_s) {
  const int half_seconds = static_cast<int>(time_s * 2.0);
  return half_seconds % 2 == 0 ? 0.5 : 0.0;
}

double opened_slowly(double time_s) { return time_s < 20.0 ? time_s / 20.0 : 0.0; }

}  // namespace
}  // namespace halfdrop

int main() {
  using namespace halfdrop;
  const BenchSpec good = test::titration_bench(), poor = poor_bench();
  const std::vector<Play> plays = {
      {"wide open", good, true, 90.0, [](double) { return 1.0; }},
      {"drop by drop", good, true, 120.0, [](double) { return 0.47; }},
      {"opened slowly", good, true, 25.0, opened_slowly},
      {"restless", good, true, 60.0, restless},
      {"a dry jet, dripping", good, false, 60.0, [](double) { return 0.46; }},
      {"a dry jet, wide open", good, false, 10.0, [](double) { return 1.0; }},
      {"a poor burette", poor, true, 120.0, opened_slowly},
  };
  for (const Play& play : plays) std::printf("%.6f,%s\n", delivered_cm3(play), play.name);
  return 0;
}
